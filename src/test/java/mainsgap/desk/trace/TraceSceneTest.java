package mainsgap.desk.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.VoltExtent;
import mainsgap.signal.Waveform;
import org.junit.jupiter.api.Test;

class TraceSceneTest {
  private static final double EXACT = 1e-12;

  @Test
  void tracesAreLaidOverEachOtherAtTheirLosses() {
    Trace early = trace("early", 101, 0.001, 0.02, 3);
    Trace late = trace("late", 201, 0.001, 0.15, -7);
    TraceScene scene = TraceScene.of(List.of(early, late));
    assertEquals(-0.15, scene.span().fromSeconds(), EXACT);
    assertEquals(0.08, scene.span().toSeconds(), EXACT);
    assertEquals(new VoltExtent(-7, 3), scene.extent());
    assertEquals(20, early.indexAt(0), EXACT);
    assertEquals(150, late.indexAt(0), EXACT);
  }

  @Test
  void focusIsTheGapAndTheDeclaredTimeWithACycleAroundThem() {
    TraceScene scene =
        TraceScene.of(List.of(trace("output", 1001, 0.001, 0.5, 1)))
            .withGap(Gap.of(0.008, "8 ms"))
            .withCycle(0.025);
    assertEquals(new TimeSpan(-0.025, 0.033), scene.focus());
    TimeSpan judged = scene.withRuler(new Ruler(0.01, 0.001, "at most 10 ms")).focus();
    assertEquals(0.036, judged.toSeconds(), EXACT);
  }

  @Test
  void focusStaysWithinTheRecord() {
    TraceScene scene = TraceScene.of(List.of(trace("output", 21, 0.001, 0.005, 1)));
    assertEquals(-0.005, scene.focus().fromSeconds(), EXACT);
    assertEquals(0.015, scene.focus().toSeconds(), EXACT);
    Trace elsewhere = trace("output", 21, 0.001, 9, 1);
    assertEquals(elsewhere.span(), TraceScene.of(List.of(elsewhere)).focus());
  }

  @Test
  void theLineRunsStraightBetweenSamples() {
    Waveform waveform = new Waveform(new byte[] {0, 10, -10}, CodeFormat.SIGNED_8, Scale.VOLTS);
    Trace trace = Trace.of("output", new TimeAxis(0, 1, 3, 0), waveform, 0);
    assertEquals(4, trace.voltsAt(0.4));
    assertEquals(-10, trace.voltsAt(2));
    assertTrue(Double.isNaN(trace.voltsAt(2.01)));
    assertTrue(Double.isNaN(trace.voltsAt(-0.01)));
  }

  @Test
  void itIsToldInWords() {
    assertEquals("no trace yet", TraceScene.EMPTY.words());
    assertEquals(
        "traces: output, mains; gap 8.4 ms ± 0.1 ms; declared: at most 10 ms",
        TraceScene.of(List.of(trace("output", 11, 0.1, 0, 1), trace("mains", 11, 0.1, 0, 1)))
            .withGap(Gap.of(0.0084, "8.4 ms ± 0.1 ms"))
            .withRuler(new Ruler(0.01, 0, "declared: at most 10 ms"))
            .words());
  }

  @Test
  void aTraceFitsItsAxis() {
    Waveform two = new Waveform(new byte[2], CodeFormat.SIGNED_8, Scale.VOLTS);
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> Trace.of("output", new TimeAxis(0, 1, 3, 0), two, 0));
    assertEquals("the trace output has 2 samples, its time axis 3", refused.getMessage());
  }

  private static Trace trace(
      String name, int length, double intervalSeconds, double zeroSeconds, int level) {
    byte[] block = new byte[length];
    block[length / 2] = (byte) level;
    return Trace.of(
        name,
        new TimeAxis(0, intervalSeconds, length, 0),
        new Waveform(block, CodeFormat.SIGNED_8, Scale.VOLTS),
        zeroSeconds);
  }
}
