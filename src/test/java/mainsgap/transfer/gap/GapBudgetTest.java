package mainsgap.transfer.gap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.instant.Returns;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.UncertaintyBudget;
import mainsgap.transfer.supply.Recording;
import org.junit.jupiter.api.Test;

/** A gap of 10 ms between two located ends, taken by a converter of 4 V a step. */
class GapBudgetTest {
  private static final TimeAxis TIME = new TimeAxis(0, 1e-5, 16, 50, true);
  private static final double NOISE_VOLTS = 2;

  private static Recording recording(CodeFormat format) {
    Waveform waveform = new Waveform(new byte[16 * 8], format, new Scale(0, 4, 0, -127, 127));
    return new Recording(new double[16], TIME, waveform, new MeasuringTask(Event.LOSS, 230, 50));
  }

  private static Edge edge(double seconds) {
    return new Edge(seconds, 3e-6, 9e-6, 1e-6, EdgeShape.RING, TIME, new double[16]);
  }

  private static UncertaintyBudget budget(CodeFormat format) {
    return new GapBudget(recording(format), NOISE_VOLTS, false)
        .ofGap(edge(0.1), new Returns(0.11, edge(0.11), false));
  }

  private static List<String> names(UncertaintyBudget budget) {
    return budget.components().stream().map(UncertaintyBudget.Component::name).toList();
  }

  @Test
  void quantisationIsItsPartOfTheScatterAndChangesNoSum() {
    UncertaintyBudget coded = budget(CodeFormat.SIGNED_8);

    assertEquals(
        List.of(
            "loss: sample interval",
            "loss: noise of 1.63 V and local slope",
            "loss: quantisation in steps of 4.00 V",
            "loss: choice of shape (decaying ring 100 %)",
            "loss: error of the models"),
        names(coded).subList(0, 5));
    // 4 V / root 12 is 1.155 V: a third of the variance of 2 V
    assertEquals(9e-3 / Math.sqrt(3), coded.components().get(2).standardMillis(), 1e-9);
    assertEquals(
        budget(CodeFormat.REAL_64_LSB_FIRST).combinedMillis(), coded.combinedMillis(), 1e-12);
  }

  @Test
  void timeBaseThatNobodyStatedIsAssumed() {
    assertTrue(names(budget(CodeFormat.SIGNED_8)).contains("time base 50 ppm, assumed"));
  }

  @Test
  void gapWithoutReturnHasABudgetOfItsLossAlone() {
    UncertaintyBudget budget =
        new GapBudget(recording(CodeFormat.REAL_64_LSB_FIRST), NOISE_VOLTS, false)
            .ofNoReturn(edge(0.1), 0.02);
    assertEquals(5, budget.components().size());
    assertEquals(
        1e3 * Math.hypot(edge(0).standardSeconds(), 0.02 * 50e-6 / Math.sqrt(3)),
        budget.combinedMillis(),
        1e-12);
  }
}
