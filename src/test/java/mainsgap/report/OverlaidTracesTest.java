package mainsgap.report;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import mainsgap.report.OverlaidTraces.Alignment;
import mainsgap.session.LoggedTrial;
import mainsgap.session.SessionHeader;
import org.junit.jupiter.api.Test;

class OverlaidTracesTest {
  private static final FigureSheet FULL_HD = FigureSheet.forVideo(1920, 1080, FigureLook.LIGHT);

  private static String texts(Figure figure) throws Exception {
    return String.join(
        "\n",
        SvgTexts.of(FigureFormat.SVG.bytes(figure, FULL_HD)).stream()
            .map(SvgTexts.Placed::text)
            .toList());
  }

  @Test
  void axisRunsFromACycleBeforeTheLossToAWhileAfterTheLastReturn() {
    OverlaidTraces traces =
        OverlaidTraces.of(
            List.of(
                InventedTraces.trace("a", 2, 8.0),
                InventedTraces.trace("b", 3, 45.0),
                InventedTraces.trace("c", 4, null)),
            Alignment.LOSS);
    assertEquals(-20, traces.fromMillis());
    assertEquals(75, traces.toMillis(), 1e-9);
  }

  @Test
  void lossesAreSpreadOverTheCycleWhereTheAngleIsAligned() {
    AlignedTrace trace = InventedTraces.trace("a", 7, 10.0);
    assertEquals(0, TraceLine.of(trace, Alignment.LOSS).lossMillis());
    assertEquals(7, TraceLine.of(trace, Alignment.ANGLE).lossMillis(), 1e-9);
    assertEquals(40, OverlaidTraces.of(List.of(trace), Alignment.LOSS).toMillis(), 1e-9);
    assertEquals(47, OverlaidTraces.of(List.of(trace), Alignment.ANGLE).toMillis(), 1e-9);
  }

  @Test
  void spikeOfOneSampleIsNotHidden() {
    TraceLine line = TraceLine.of(InventedTraces.trace("a", 2, 8.0), Alignment.LOSS);
    assertEquals(325, line.mostVolts(-20, -0.1), 0.1);
    assertEquals(0, line.mostVolts(0.05, 7.9), 1e-9);
    assertEquals(0, line.mostVolts(5_000, 6_000));
  }

  @Test
  void everyTraceIsNamedAndTheAlignmentIsTold() throws Exception {
    String loss = texts(OverlaidTraces.of(InventedTraces.many(3), Alignment.LOSS));
    String angle = texts(OverlaidTraces.of(InventedTraces.many(3), Alignment.ANGLE));
    assertAll(
        () -> assertTrue(loss.contains("Lumengrove 601, trial 1: 8.5 ms"), loss),
        () -> assertTrue(loss.contains("aligned at the loss"), loss),
        () -> assertTrue(loss.contains("time from the loss, ms"), loss),
        () -> assertTrue(angle.contains("angle normalised"), angle),
        () -> assertTrue(angle.contains("A hollow mark stands at the loss"), angle));
  }

  @Test
  void nothingChosenAndATrialWithoutALossAreRefusedInWords() {
    assertEquals(
        "no trial is chosen whose trace could be drawn: choose one",
        assertThrows(ReportException.class, () -> OverlaidTraces.of(List.of(), Alignment.LOSS))
            .getMessage());
    SessionHeader header = InventedSessions.header("a", InventedSessions.LOSS_AT_230, Map.of());
    LoggedTrial refused = InventedSessions.trial(3, InventedSessions.refused(), null, null);
    assertTrue(
        String.valueOf(
                assertThrows(
                        ReportException.class,
                        () ->
                            AlignedTrace.of(
                                "a", header, refused, InventedTraces.trace("a", 2, 8.0).capture()))
                    .getMessage())
            .startsWith("trial 3 of a cannot be laid over others: it tells no loss ("));
  }
}
