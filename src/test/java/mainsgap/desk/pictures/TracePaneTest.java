package mainsgap.desk.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.trace.TraceScene;
import mainsgap.signal.Capture;
import mainsgap.transfer.FittedSupplies;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(DeskToolkit.class)
class TracePaneTest {
  private static final FittedSupplies BOTH =
      new FittedSupplies(InventedCaptures.MAINS, InventedCaptures.BACKUP);

  private final TracePane pane = DeskToolkit.onFx(TracePane::new);
  private final PictureStage stage = new PictureStage(pane.node(), 900, 420);

  @AfterEach
  void close() {
    stage.close();
  }

  @Test
  void theGapIsShownFirstAndTheButtonsTurnToTheWholeRecordAndBack() {
    TraceScene scene = show(gapCapture(), InventedTrials.measured(8.42, 0.05, 70));
    assertEquals(scene.focus(), DeskToolkit.onFx(() -> pane.view().getView()));
    stage.shoot("pictures-trace");
    fire("#trace-whole-record");
    assertEquals(scene.span(), DeskToolkit.onFx(() -> pane.view().getView()));
    fire("#trace-gap");
    assertEquals(scene.focus(), DeskToolkit.onFx(() -> pane.view().getView()));
  }

  @Test
  void everyChannelIsShown() {
    show(InventedCaptures.ofEveryChannel(), InventedTrials.measured(8.42, 0.05, 70));
    stage.shoot("pictures-trace-channels");
    stage.resize(480, 300, 14);
    stage.shoot("pictures-trace-small");
    stage.resize(2600, 1200, 28);
    stage.shoot("pictures-trace-4k");
    assertTrue(
        pane.view().getAccessibleText().contains("load current, 1 A drawn as 50 V"),
        pane.view().getAccessibleText());
  }

  @Test
  void withoutAReturnItIsSaid() {
    show(InventedCaptures.ofOutput(InventedCaptures::lost), InventedTrials.noReturn(278.99));
    stage.shoot("pictures-trace-no-return");
    assertEquals("No return in the record: the gap goes on at its end.", text("#trace-remark"));
  }

  @Test
  void withoutAnInterruptionTheButtonLeadsToTheLoss() {
    show(
        InventedCaptures.ofOutput(InventedCaptures.MAINS::voltsAt),
        InventedTrials.noInterruption());
    stage.shoot("pictures-trace-no-interruption");
    assertEquals("At the loss", text("#trace-gap"));
    assertTrue(text("#trace-remark").startsWith("No interruption"));
  }

  @Test
  void aRefusedCaptureIsShownWhole() {
    TraceScene scene =
        show(gapCapture(), new Refused("the output is clipped: choose 400 V or more"));
    stage.shoot("pictures-trace-refused");
    assertEquals(scene.span(), DeskToolkit.onFx(() -> pane.view().getView()));
    assertTrue(DeskToolkit.onFx(() -> node("#trace-gap").isDisabled()));
  }

  @Test
  void whatIsClearedSaysWhyAndNothingOfBefore() {
    show(gapCapture(), new Refused("the output is clipped"));
    DeskToolkit.doOnFx(() -> pane.clear("This trial's capture is being read."));
    stage.shoot("pictures-trace-none");
    assertEquals("This trial's capture is being read.", text("#trace-why-none"));
    assertFalse(DeskToolkit.onFx(() -> pane.view().isVisible()));
    assertEquals("", text("#trace-remark"));
    assertTrue(DeskToolkit.onFx(() -> node("#trace-whole-record").isDisabled()));
  }

  private TraceScene show(Capture capture, Outcome outcome) {
    TraceScene scene = TracePane.sceneOf(capture, outcome, BOTH, InventedTrials.TEN);
    DeskToolkit.doOnFx(() -> pane.show(scene));
    stage.layOut();
    return scene;
  }

  private static Capture gapCapture() {
    return InventedCaptures.ofOutput(InventedCaptures::output);
  }

  private void fire(String selector) {
    DeskToolkit.doOnFx(() -> ((Button) node(selector)).fire());
  }

  private String text(String selector) {
    return DeskToolkit.onFx(() -> ((Labeled) node(selector)).getText());
  }

  private Node node(String selector) {
    return pane.node().lookup(selector);
  }
}
