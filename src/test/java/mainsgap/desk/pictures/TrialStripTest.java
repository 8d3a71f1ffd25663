package mainsgap.desk.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.stream.Collectors;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import mainsgap.desk.DeskToolkit;
import mainsgap.transfer.claim.DeclaredClaim;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;

@ExtendWith(DeskToolkit.class)
class TrialStripTest {
  private final TrialStrip strip = DeskToolkit.onFx(TrialStrip::new);
  private final PictureStage stage = new PictureStage(strip.node(), 900, 260);

  @AfterEach
  void close() {
    stage.close();
  }

  @Test
  void everyKindHasItsShapeAndItsWord() {
    show(InventedTrials.ofEveryKind());
    stage.shoot("pictures-strip");
    Set<String> legend = words(".picture-legend-entry");
    assertTrue(
        legend.containsAll(
            Set.of("PASS", "FAIL", "INCONCLUSIVE", "refused", "set aside", "declared time")),
        legend.toString());
    assertTrue(legend.contains("FAIL, no return"), legend.toString());
    assertEquals(Set.of("declared: 10 ms"), words(".strip-declared-words"));
  }

  @Test
  void arrowKeysChooseTrialsInTheirOrder() {
    show(InventedTrials.ofEveryKind());
    FxRobot robot = new FxRobot();
    DeskToolkit.doOnFx(() -> strip.node().lookup("#strip-plot").requestFocus());
    robot.type(KeyCode.LEFT);
    assertEquals(8, chosen());
    robot.type(KeyCode.RIGHT);
    assertEquals(8, chosen());
    robot.type(KeyCode.LEFT);
    robot.type(KeyCode.LEFT);
    assertEquals(6, chosen());
    robot.type(KeyCode.HOME);
    assertEquals(1, chosen());
    stage.shoot("pictures-strip-chosen");
    assertEquals(Set.of("trial 1: 8.42 ms ± 0.10 ms, PASS"), words("#strip-chosen"));
    robot.type(KeyCode.END);
    assertEquals(8, chosen());
  }

  @Test
  void aClickChoosesTheTrialThereAndOneBesideThemNone() {
    show(InventedTrials.ofEveryKind());
    StripPlot plot = (StripPlot) strip.node().lookup("#strip-plot");
    FxRobot robot = new FxRobot();
    for (int number : new int[] {2, 4, 7}) {
      robot.clickOn(
          DeskToolkit.onFx(
              () ->
                  plot.places().placed().stream()
                      .filter(placed -> placed.point().number() == number)
                      .map(placed -> plot.localToScreen(new Point2D(placed.x(), placed.y())))
                      .findFirst()
                      .orElseThrow()));
      assertEquals(number, chosen());
    }
    robot.clickOn(DeskToolkit.onFx(() -> plot.localToScreen(new Point2D(300, 60))));
    assertNull(chosen());
  }

  @Test
  void theChosenTrialStaysSoWhileItIsThere() {
    show(InventedTrials.ofEveryKind());
    DeskToolkit.doOnFx(() -> strip.choose(7));
    show(InventedTrials.ofEveryKind().add(InventedTrials.measured(9, 0.1, 3)));
    assertEquals(7, chosen());
    show(InventedTrials.many(3, 8, 0.1));
    assertNull(chosen());
    DeskToolkit.doOnFx(() -> strip.choose(99));
    assertNull(chosen());
  }

  @Test
  void oneTrialAndHundredsAreShown() {
    show(InventedTrials.many(1, 8.4, 0.2));
    stage.shoot("pictures-strip-one");
    show(InventedTrials.many(20, 8.4, 0.3));
    stage.shoot("pictures-strip-twenty");
    show(InventedTrials.many(400, 8.4, 0.3));
    stage.shoot("pictures-strip-hundreds");
    show(InventedTrials.many(400, 8.4, 0.02));
    stage.shoot("pictures-strip-dense");
    assertEquals(Set.of("400 trials: 400 PASS"), words("#strip-counts"));
  }

  @Test
  void aLineNearTheZeroHasItsWordsBesideItAndNotAcrossIt() {
    DeclaredClaim one = DeclaredClaim.ofMillis(1, "1.0 ms");
    InventedTrials trials = new InventedTrials(one);
    for (double millis : new double[] {7.5, 9.4, 9.5}) {
      trials.add(InventedTrials.measured(millis, 0.03, 10));
    }
    DeskToolkit.doOnFx(() -> strip.show(trials.list(), one, trials.figures()));
    stage.layOut();
    stage.shoot("pictures-strip-failed");
    Bounds words = boundsOf(".strip-declared-words");
    Bounds line = boundsOf(".strip-declared");
    assertTrue(words.getMinX() > line.getMaxX(), words + " and " + line);
  }

  @Test
  void nothingYetIsSaidSo() {
    show(new InventedTrials(null));
    stage.shoot("pictures-strip-none");
    assertEquals(Set.of("No trial yet."), words("#strip-counts"));
  }

  @Test
  void smallAndLargeScreensHoldIt() {
    show(InventedTrials.ofEveryKind());
    stage.resize(480, 240, 14);
    stage.shoot("pictures-strip-small");
    stage.resize(2600, 700, 28);
    stage.shoot("pictures-strip-4k");
    assertEquals(
        "8 trials: 3 PASS, 2 FAIL, 1 INCONCLUSIVE, 1 refused, 1 set aside",
        strip.node().lookup("#strip-plot").getAccessibleText().replaceAll(";.*", ""));
  }

  private void show(InventedTrials trials) {
    DeskToolkit.doOnFx(() -> strip.show(trials.list(), InventedTrials.TEN, trials.figures()));
    stage.layOut();
  }

  private Bounds boundsOf(String selector) {
    return DeskToolkit.onFx(
        () -> {
          Node node = strip.node().lookup("#strip-plot").lookup(selector);
          return node.localToScene(node.getBoundsInLocal());
        });
  }

  private Integer chosen() {
    return DeskToolkit.onFx(() -> strip.chosenProperty().get());
  }

  private Set<String> words(String selector) {
    return DeskToolkit.onFx(
        () ->
            strip.node().lookupAll(selector).stream()
                .filter(Node::isVisible)
                .map(
                    node -> node instanceof Text text ? text.getText() : ((Labeled) node).getText())
                .collect(Collectors.toSet()));
  }
}
