package mainsgap.transfer.gap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import mainsgap.signal.Capture;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Verdict;
import org.junit.jupiter.api.Test;

/** 230 V at 50 Hz that is lost, and comes back shortly before the record ends, or never. */
class ShownGapTest {
  private static final double PEAK = 230 * Math.sqrt(2);
  private static final double INTERVAL_SECONDS = 1e-5;
  private static final double LOSS_SECONDS = 0.13;
  private static final int CAPTURES = 500;

  /**
   * One record.
   *
   * @param gapSeconds infinite where nothing comes back
   * @param tailSeconds how much of the record follows the return, or else the loss
   * @param angle of the supply after at its return, in radians
   * @param riseSeconds how long it takes to its full amplitude
   * @param offsetVolts what stays on the load in the gap
   */
  private record Tail(
      double lossSeconds,
      double gapSeconds,
      double tailSeconds,
      double angle,
      double noiseVolts,
      double riseSeconds,
      double offsetVolts) {

    /** A soft rise is unseen at first: it has a while to show. */
    static Tail drawn(RandomGenerator dice) {
      boolean rises = dice.nextInt(4) == 0;
      return new Tail(
          LOSS_SECONDS + 0.02 * dice.nextDouble(),
          3e-3 + 25e-3 * dice.nextDouble(),
          (rises ? 2e-3 : 0.1e-3) + 9e-3 * dice.nextDouble(),
          2 * Math.PI * dice.nextDouble(),
          Math.exp(Math.log(0.2) + Math.log(10) * dice.nextDouble()),
          rises ? 8e-3 * dice.nextDouble() : 0,
          dice.nextInt(3) == 0 ? 60 * (dice.nextDouble() - 0.5) : 0);
    }

    Outcome outcome(SplittableRandom dice) {
      double returned = lossSeconds + gapSeconds;
      double end = (Double.isInfinite(gapSeconds) ? lossSeconds : returned) + tailSeconds;
      int samples = (int) (end / INTERVAL_SECONDS);
      ByteBuffer block = ByteBuffer.allocate(samples * 8).order(ByteOrder.LITTLE_ENDIAN);
      for (int i = 0; i < samples; i++) {
        double t = i * INTERVAL_SECONDS;
        double volts = offsetVolts;
        if (t < lossSeconds) {
          volts = PEAK * Math.sin(2 * Math.PI * 50 * t);
        } else if (t >= returned) {
          double since = t - returned;
          double share = riseSeconds == 0 ? 1 : Math.min(1, since / riseSeconds);
          volts = share * PEAK * Math.sin(2 * Math.PI * 50 * since + angle);
        }
        block.putDouble(volts + noiseVolts * dice.nextGaussian());
      }
      Waveform output = new Waveform(block.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
      return TransferMeasurement.measure(
          Capture.ofOutput(new TimeAxis(0, INTERVAL_SECONDS, samples, 0), output),
          new MeasuringTask(Event.LOSS, 230, 50));
    }
  }

  @Test
  void leastTimeIsNeverAboveTheTruthHoweverLateAndWhereverOnTheWaveTheReturnIs() {
    SplittableRandom dice = new SplittableRandom(21);
    int told = 0;
    double shortest = 0;
    for (int i = 0; i < CAPTURES; i++) {
      Tail tail = Tail.drawn(dice);
      if (tail.outcome(dice) instanceof NoReturn found) {
        double truth = 1e3 * tail.gapSeconds();
        double excess = found.atLeastMillis() - found.uncertaintyMillis() - truth;
        assertTrue(excess <= 0, excess + " ms over the truth: " + tail);
        shortest += truth - found.atLeastMillis();
        told++;
      }
    }
    assertTrue(told > CAPTURES / 2, told + " without a return");
    assertTrue(shortest / told < 0.8, shortest / told + " ms short in the mean");
  }

  @Test
  void returnNearACrossingOfZeroIsNoFailureOfAClaimThatItMeets() {
    Tail tail = new Tail(0.13, 9.5e-3, 10.5e-3, Math.toRadians(-9), 1, 0, 0);
    Outcome outcome = tail.outcome(new SplittableRandom(3));

    NoReturn found = assertInstanceOf(NoReturn.class, outcome, outcome.sentence());
    assertEquals(9.5, found.atLeastMillis(), 0.15);
    assertTrue(found.comesBackTooLate());
    Judgement judged = TrialVerdict.judge(found, DeclaredClaim.ofMillis(10, "10ms")).orElseThrow();
    assertEquals(Verdict.INCONCLUSIVE, judged.verdict());
    assertTrue(judged.reason().contains("too late in the record"), judged.reason());
    assertTrue(judged.reason().contains("record longer after the trigger"), judged.reason());
  }

  @Test
  void gapThatGoesOnIsShownToTheEndOfTheRecord() {
    Tail tail = new Tail(0.1353, Double.POSITIVE_INFINITY, 300e-3, 0, 1, 0, 5);
    NoReturn found = assertInstanceOf(NoReturn.class, tail.outcome(new SplittableRandom(4)));

    assertEquals(300, found.atLeastMillis(), 0.1);
    assertFalse(found.comesBackTooLate());
  }
}
