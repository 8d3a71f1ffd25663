package mainsgap.desk.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.VoltExtent;
import mainsgap.signal.Waveform;
import org.junit.jupiter.api.Test;

class OutlineTest {
  private static final int WIDTH = 100;

  @Test
  void aSpikeOfOneSampleIsSeenWhereItIsHoweverManySamplesAStripHolds() {
    for (int samples : new int[] {500, 40_000, 1_000_003}) {
      for (int spike : new int[] {0, 31, 32, 33, samples / 3, samples - 2, samples - 1}) {
        Outline outline = outline(samples, spike);
        List<Integer> seen = new ArrayList<>();
        for (int strip = 0; strip < outline.length(); strip++) {
          if (outline.top(strip) < 5) {
            seen.add(strip);
          }
        }
        double at = (double) spike / samples * outline.length();
        assertEquals(
            at, seen.get(0), 1.2 + 1.0 * outline.length() / samples, samples + ": " + spike);
      }
    }
  }

  private static Outline outline(int samples, int spike) {
    byte[] block = new byte[samples];
    block[spike] = 100;
    Waveform waveform = new Waveform(block, CodeFormat.SIGNED_8, new Scale(0, 0.01, 0, -128, 127));
    TimeAxis time = new TimeAxis(0, 1e-6, samples, 1);
    Outline outline = new Outline(WIDTH);
    TimeSpan span = new TimeSpan(0, samples * 1e-6);
    outline.take(
        Trace.of("", time, waveform, 0), new PlotFrame(WIDTH, 100, 0, span, new VoltExtent(0, 1)));
    return outline;
  }
}
