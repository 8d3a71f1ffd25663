package mainsgap.transfer.instant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Objects;
import java.util.Random;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.edge.Edge;
import mainsgap.transfer.edge.EdgeShape;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.supply.Recording;
import mainsgap.transfer.supply.Residue;
import mainsgap.transfer.supply.Supply;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * An output of 50 Hz that is made at a crest and crosses zero 5 ms later; in a bend it is open from
 * 0.8 ms before that crossing up to it, on a load that discharges in 0.4 ms.
 */
class BentBreakTest {
  private static final double PEAK_VOLTS = 325;
  private static final double NOISE_VOLTS = 0.5;
  private static final double FIRST_SECONDS = 0.055;
  private static final double OPENED_SECONDS = 0.0592;
  private static final double MADE_SECONDS = 0.06;
  private static final double DECAY_SECONDS = 0.4e-3;
  private static final double LENGTH_SECONDS = 0.2;
  private static final double RATE = 100e3;
  private static final Residue DEAD = Residue.level(0, NOISE_VOLTS, 0);

  private static double supplied(double seconds) {
    return PEAK_VOLTS * Math.sin(2 * Math.PI * 50 * seconds);
  }

  private static double[] made(double rate) {
    Random noise = new Random(1);
    double[] volts = new double[(int) (LENGTH_SECONDS * rate)];
    for (int i = 0; i < volts.length; i++) {
      double fed = i / rate < FIRST_SECONDS ? 0 : supplied(i / rate);
      volts[i] = fed + NOISE_VOLTS * noise.nextGaussian();
    }
    return volts;
  }

  /** The same, open in the bend. */
  private static double[] bent(double rate) {
    double[] volts = made(rate);
    for (int i = 0; i < volts.length; i++) {
      double seconds = i / rate;
      if (seconds >= OPENED_SECONDS && seconds < MADE_SECONDS) {
        double left = Math.exp((OPENED_SECONDS - seconds) / DECAY_SECONDS);
        volts[i] += supplied(OPENED_SECONDS) * left - supplied(seconds);
      }
    }
    return volts;
  }

  private static Recording recording(double[] volts, double rate) {
    TimeAxis time = new TimeAxis(0, 1 / rate, (int) (LENGTH_SECONDS * rate), 50, true);
    Scale scale = new Scale(0, 0.1, 0, -32767, 32767);
    Waveform codes =
        new Waveform(new byte[2 * volts.length], CodeFormat.SIGNED_16_LSB_FIRST, scale);
    return new Recording(volts, time, codes, new MeasuringTask(Event.LOSS, 230, 50));
  }

  private static @Nullable OpenedAgain found(double[] volts, double rate, Residue residue) {
    Recording settled = recording(made(rate), rate);
    Supply after = Supply.fit(settled, (int) (0.08 * rate), settled.length(), 50);
    TimeAxis none = new TimeAxis(0, 1 / rate, 1, 50, true);
    Edge first = new Edge(FIRST_SECONDS, 0, 0, 0, EdgeShape.ABRUPT, none, new double[1]);
    return new BentBreak(recording(volts, rate), residue, after, first, first, NOISE_VOLTS).found();
  }

  @ParameterizedTest
  @ValueSource(doubles = {20e3, 100e3, 2e6})
  void bendIsABreakAtAnyRate(double rate) {
    OpenedAgain open = Objects.requireNonNull(found(bent(rate), rate, DEAD));

    double within = Math.max(60e-6, 2 / rate);
    assertTrue(open.openTo() / rate <= MADE_SECONDS && MADE_SECONDS <= open.to() / rate);
    assertTrue((open.to() - open.openTo()) / rate <= 2 * within);
    assertEquals(OPENED_SECONDS, open.residue().referenceSeconds(), within);
    assertEquals(DECAY_SECONDS, open.residue().decaySeconds(), 0.15 * DECAY_SECONDS);
  }

  @Test
  void supplyThatIsFollowedHasNone() {
    assertNull(found(made(RATE), RATE, DEAD));
  }

  /** Fed behind it means that the supply is seen there. */
  @Test
  void recordThatEndsInTheBendShowsNone() {
    double[] ends = Arrays.copyOf(bent(RATE), (int) (MADE_SECONDS * RATE));

    assertNull(found(ends, RATE, DEAD));
  }

  /** Half a millisecond before, it is as far off on the other side. */
  @Test
  void ringIsNone() {
    double[] rings = bent(RATE);
    for (int i = (int) (0.0586 * RATE); i < (int) (0.0588 * RATE); i++) {
      rings[i] += 10;
    }

    assertNull(found(rings, RATE, DEAD));
  }

  /** A supply that walks from its fit lies beside it before and behind as well. */
  @Test
  void supplyBesideItsFitHasNone() {
    double[] beside = made(RATE);
    for (int i = (int) (0.057 * RATE); i < (int) (0.063 * RATE); i++) {
      beside[i] += 1.2;
    }

    assertNull(found(beside, RATE, DEAD));
  }

  @Test
  void behindAMotorNoneIsLookedFor() {
    Residue motor = new Residue(0.05, 0, 0.1, 45, 100, 0, NOISE_VOLTS, 0);

    assertNull(found(bent(RATE), RATE, motor));
  }

  /** Far from the crossing such a bend is something else: a dip, a limit of the output. */
  @Test
  void bendAtACrestIsNone() {
    double[] bend = bent(RATE);
    double[] fed = made(RATE);
    double[] crest = made(RATE);
    int later = (int) (0.005 * RATE);
    for (int i = (int) (OPENED_SECONDS * RATE); i < (int) (MADE_SECONDS * RATE); i++) {
      crest[i + later] += bend[i] - fed[i];
    }

    assertNull(found(crest, RATE, DEAD));
  }
}
