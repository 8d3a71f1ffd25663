package mainsgap.desk.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import mainsgap.desk.DeskToolsForTests;
import mainsgap.report.FigureFormat;
import mainsgap.report.FigureLook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All on the calling thread. */
class ExportTest {
  private final Path folder;
  private final FindingsModel model;
  private final Export export;

  ExportTest(@TempDir Path folder) {
    this.folder = folder;
    model = new FindingsModel(DeskToolsForTests.atOnce(folder), folder);
    export = model.export();
  }

  @BeforeEach
  void openOne() {
    model.open(new SimulatedSessions(folder).usual("Invented Lumengrove 600"));
  }

  private FigureOrder order() {
    FigureOrder order = model.easel().order();
    assertNotNull(order);
    return order;
  }

  private static ExportForm form(FigureFormat format, String width, Path file) {
    return new ExportForm(format, width, "720", "18", FigureLook.DARK, file.toString());
  }

  @Test
  void pictureHasTheSizeAskedForAndItsFolderIsSuggestedNextTime() throws IOException {
    Path file = folder.resolve("trials.png");
    export.write(order(), form(FigureFormat.PNG, "1280", file));

    assertEquals("Written: " + file, export.saidProperty().get());
    assertFalse(export.failedProperty().get());
    BufferedImage image = ImageIO.read(file.toFile());
    assertEquals(1280, image.getWidth());
    assertEquals(720, image.getHeight());
    assertEquals(0xFF0D1117, image.getRGB(0, 0));
    assertEquals(
        folder.resolve("trials-1920x1080.svg").toString(),
        export.suggestion(order(), "1920x1080", ".svg"));
  }

  @Test
  void theEndingIsAddedWhereItIsMissing() {
    export.write(order(), form(FigureFormat.SVG, "1280", folder.resolve("trials")));
    assertTrue(Files.exists(folder.resolve("trials.svg")));
  }

  @Test
  void fileThatIsThereIsReplacedOnlyWhenAskedTo() throws IOException {
    Path file = Files.writeString(folder.resolve("a.svg"), "mine");
    ExportForm form = form(FigureFormat.SVG, "1280", file);
    export.write(order(), form);

    assertEquals(file, export.inTheWayProperty().get());
    assertEquals(
        "There is a file " + file + " already: choose another name, or agree to replace it",
        export.saidProperty().get());
    assertEquals("mine", Files.readString(file));

    export.replace(order(), form);

    assertNull(export.inTheWayProperty().get());
    assertTrue(Files.readString(file).contains("Invented Lumengrove 600"));
  }

  @Test
  void agreementOnOneFileIsNoneOnAnother() throws IOException {
    Path asked = Files.writeString(folder.resolve("a.svg"), "mine");
    Path other = Files.writeString(folder.resolve("b.svg"), "mine too");
    export.write(order(), form(FigureFormat.SVG, "1280", asked));

    export.replace(order(), form(FigureFormat.SVG, "1280", other));

    assertEquals("mine too", Files.readString(other));
    assertEquals(other, export.inTheWayProperty().get());
  }

  @Test
  void folderThatIsNotThereIsSaidAndAnotherOneIsTaken() {
    Path file = folder.resolve("missing").resolve("a.png");
    export.write(order(), form(FigureFormat.PNG, "1280", file));

    assertTrue(export.failedProperty().get());
    assertEquals(
        "Could not write the figure "
            + file
            + ": there is no folder "
            + file.getParent()
            + "; choose another folder",
        export.saidProperty().get());

    export.write(order(), form(FigureFormat.PNG, "1280", folder.resolve("a.png")));
    assertFalse(export.failedProperty().get());
  }

  @Test
  void sizeThatIsNoneIsSaid() {
    export.write(order(), form(FigureFormat.PNG, "wide", folder.resolve("a.png")));
    assertEquals(
        "The width 'wide' is no number of pixels: type one such as 1080",
        export.saidProperty().get());

    export.write(order(), form(FigureFormat.PNG, "100", folder.resolve("a.png")));
    assertTrue(
        export.saidProperty().get().startsWith("A figure of 100 x 720 pixels cannot be drawn"),
        export.saidProperty().get());

    export.write(
        order(), new ExportForm(FigureFormat.PNG, "1280", "720", "20", FigureLook.LIGHT, " "));
    assertEquals("No file is named: type a path, or choose one", export.saidProperty().get());
  }
}
