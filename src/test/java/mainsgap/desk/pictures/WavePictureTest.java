package mainsgap.desk.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import javafx.scene.control.Labeled;
import javafx.scene.text.Text;
import mainsgap.desk.DeskToolkit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(DeskToolkit.class)
class WavePictureTest {
  private final WavePicture wave = DeskToolkit.onFx(WavePicture::new);
  private final PictureStage stage = new PictureStage(wave.node(), 420, 240);

  @AfterEach
  void close() {
    stage.close();
  }

  @Test
  void eachLossHasItsPlaceAndTheLatestIsNamed() {
    show(InventedTrials.ofEveryKind());
    stage.shoot("pictures-wave");
    assertEquals("trial 8: 318°", latest());
    assertEquals("6 losses, none between 140° and 270°.", text("#wave-words"));
  }

  @Test
  void noneOneAndHundredsAreShown() {
    show(new InventedTrials(null));
    stage.shoot("pictures-wave-none");
    assertEquals("No loss yet.", text("#wave-words"));
    show(new InventedTrials(null).add(InventedTrials.measured(8, 0.1, 359.8)));
    stage.shoot("pictures-wave-one");
    assertEquals("1 loss, at 0°.", text("#wave-words"));
    assertEquals("trial 1: 0°", latest());
    show(InventedTrials.many(400, 8, 0.1));
    stage.shoot("pictures-wave-hundreds");
  }

  @Test
  void smallAndLargeScreensHoldIt() {
    show(InventedTrials.many(12, 8, 0.1));
    stage.resize(300, 200, 14);
    stage.shoot("pictures-wave-small");
    stage.resize(1200, 700, 28);
    stage.shoot("pictures-wave-4k");
    assertEquals("One cycle of the supply: " + text("#wave-words"), accessible());
  }

  private void show(InventedTrials trials) {
    DeskToolkit.doOnFx(() -> wave.show(trials.list()));
    stage.layOut();
  }

  private String accessible() {
    return DeskToolkit.onFx(() -> wave.node().lookup("#wave-plot").getAccessibleText());
  }

  private String text(String selector) {
    return DeskToolkit.onFx(() -> ((Labeled) wave.node().lookup(selector)).getText());
  }

  private String latest() {
    return DeskToolkit.onFx(() -> ((Text) wave.node().lookup(".wave-latest")).getText());
  }
}
