package mainsgap.desk.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.trace.TraceScene;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is shown of the sessions that are open; all on the calling thread. */
class WhatIsShownTest {
  private final DeskTools tools;
  private final SimulatedSessions made;
  private final FindingsModel model;

  WhatIsShownTest(@TempDir Path folder) {
    tools = DeskToolsForTests.atOnce(folder);
    made = new SimulatedSessions(folder);
    model = new FindingsModel(tools, folder);
    model.easel().resize(1000, 600, 1);
  }

  @Test
  void figureFollowsWhatIsWishedAndTheLookOfTheWindow() {
    model.open(made.usual("Invented Lumengrove 600"));
    Picture light = model.easel().pictureProperty().get();

    model.wish(FigureWishes.USUAL.of(FigureKind.FAST_AGAINST_CLEAN));
    assertEquals("Fast against clean", model.easel().pictureProperty().get().words());

    model.wish(FigureWishes.USUAL);
    tools.appearance().darkProperty().set(true);
    Picture dark = model.easel().pictureProperty().get();
    assertEquals(0xFFFFFFFF, light.image().getPixelReader().getArgb(0, 0));
    assertEquals(0xFF0D1117, dark.image().getPixelReader().getArgb(0, 0));
  }

  @Test
  void trialIsOpenedAgainWithItsRawCaptureAndClosedWithItsSession() {
    Path file = made.usual("Invented Lumengrove 600");
    model.open(file);
    TrialRow row = model.rows().get(1);

    model.trial().open(row);

    assertEquals(row, model.trial().trialProperty().get());
    TraceScene scene = model.trial().sceneProperty().get();
    assertNotNull(scene);
    assertNotNull(scene.gap());
    assertEquals(2, scene.curves().size());
    assertEquals("", model.trial().whyNoneProperty().get());
    FigureOrder onScreen = model.onScreen();
    assertNotNull(onScreen);
    assertEquals("invented-lumengrove-600-trial-2", onScreen.fileName());

    model.remove(file);
    assertNull(model.trial().trialProperty().get());
  }

  @Test
  void captureThatCannotBeReadIsSaidAndTheFigureIsOneKeyAway() throws IOException {
    Path file = made.usual("Invented Lumengrove 600");
    model.open(file);
    Files.delete(file);

    model.trial().open(model.rows().get(0));

    assertNull(model.trial().sceneProperty().get());
    assertEquals(
        "The raw capture could not be shown: there is no session file "
            + file
            + "; check the path. Esc goes back.",
        model.trial().whyNoneProperty().get());
    model.wish(FigureWishes.USUAL);
    assertNull(model.trial().trialProperty().get());
  }

  @Test
  void placeTooSmallForAFigureIsSaid() {
    model.open(made.usual("Invented Lumengrove 600"));

    model.easel().resize(200, 100, 1);

    assertNull(model.easel().pictureProperty().get());
    assertTrue(
        model.easel().whyNoneProperty().get().startsWith("a figure of 200 x 100 pixels"),
        model.easel().whyNoneProperty().get());
  }
}
