package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;

/** Recordings that were filled up, and those that only look so. */
class HeldSamplesTest {

  @Test
  void aSineIsNotHeld() {
    Capture sine = capture(1000, 1, 0);
    assertEquals(1, HeldSamples.times(sine.output()));
    assertSame(sine, HeldSamples.once(sine));
  }

  @Test
  void aSineThatIsHeldComesBackAsItWasTaken() {
    Capture once = HeldSamples.once(capture(1000, 4, 3));
    assertEquals(4e-5, once.time().intervalSeconds(), 1e-18);
    assertEquals(1e-5, once.time().firstSampleSeconds(), 1e-18, "the first block has one sample");
    assertEquals(999, once.time().length());
    assertEquals(volts(1), once.output().voltsAt(0), 0.5);
    assertEquals(volts(999), once.output().voltsAt(998), 0.5);
  }

  /** 8 bits at a high rate stand still for many samples, but for no grid of them. */
  @Test
  void aSlowVoltageInCoarseCodesIsNotHeld() {
    byte[] block = new byte[20_000];
    for (int i = 0; i < block.length; i++) {
      block[i] = (byte) Math.round(100 * Math.sin(2 * Math.PI * i / 20_000.0));
    }
    assertEquals(1, HeldSamples.times(new Waveform(block, CodeFormat.SIGNED_8, scale())));
  }

  /** Its crossings lie on a grid of half cycles: that is its shape. */
  @Test
  void aSquareVoltageIsNotHeld() {
    byte[] block = new byte[20_000];
    for (int i = 0; i < block.length; i++) {
      block[i] = (byte) (i % 400 < 200 ? 100 : -100);
    }
    assertEquals(1, HeldSamples.times(new Waveform(block, CodeFormat.SIGNED_8, scale())));
    Waveform flat = new Waveform(new byte[20_000], CodeFormat.SIGNED_8, scale());
    assertEquals(1, HeldSamples.times(flat), "a dead input changes nowhere");
  }

  private static Capture capture(int taken, int times, int cut) {
    byte[] block = new byte[taken * times - cut];
    for (int i = 0; i < block.length; i++) {
      block[i] = (byte) Math.round(volts((i + cut) / times));
    }
    return Capture.ofOutput(
        new TimeAxis(0, 1e-5, block.length, 50), new Waveform(block, CodeFormat.SIGNED_8, scale()));
  }

  private static double volts(int index) {
    return 100 * Math.sin(index * 0.31);
  }

  private static Scale scale() {
    return Scale.VOLTS;
  }
}
