package mainsgap.bench;

import java.util.Locale;
import mainsgap.simulation.TrialTruth;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;

/** A trial of the simulated bench beside what truly happened in it. */
record KnownTrial(long seed, int number, Outcome outcome, TrialTruth truth) {

  boolean isOfTheRightKind() {
    return truth.change() == TrialTruth.Change.OPENING
        && outcome.kind()
            == switch (truth.kind()) {
              case GAP -> Outcome.Kind.MEASURED;
              case NO_RETURN -> Outcome.Kind.NO_RETURN;
              case NO_GAP -> Outcome.Kind.NO_INTERRUPTION;
            };
  }

  boolean isGap() {
    return truth.transferMillis() != null && outcome instanceof Measured;
  }

  /** Whether the stated interval holds the true transfer time. */
  boolean isHeld() {
    return isGap() && Math.abs(errorMillis()) <= uncertaintyMillis();
  }

  /** Of the transfer time; NaN where it was not measured. */
  double errorMillis() {
    Double millis = truth.transferMillis();
    return millis != null && outcome instanceof Measured measured
        ? measured.transferMillis() - millis
        : Double.NaN;
  }

  /** Of the transfer time; NaN where it was not measured. */
  double uncertaintyMillis() {
    return outcome instanceof Measured measured ? measured.uncertaintyMillis() : Double.NaN;
  }

  /** Of how long the make bounced; NaN where no gap was measured. */
  double bounceErrorMillis() {
    Double first = truth.firstReturnSeconds();
    Double back = truth.returnSeconds();
    return first != null && back != null && outcome instanceof Measured measured
        ? 1e3 * (measured.returnSeconds() - measured.firstReturnSeconds() - (back - first))
        : Double.NaN;
  }

  @Override
  public String toString() {
    Double firstReturn = truth.firstReturnSeconds();
    Double back = truth.returnSeconds();
    String trial =
        String.format(
            Locale.ROOT,
            "seed %d trial %d, loss at %.1f degrees, opening bounced for %.3f ms",
            seed,
            number,
            truth.pointOnWaveDegrees(),
            1e3 * (truth.lastOpeningSeconds() - truth.lossSeconds()));
    if (!(outcome instanceof Measured measured) || firstReturn == null || back == null) {
      return trial + ": " + outcome.sentence() + ", truth " + truth.kind();
    }
    return String.format(
        Locale.ROOT,
        "%s, make bounced for %.3f ms (found %.3f ms), truth %.3f ms: error %.1f us of %.1f us"
            + " (loss %.1f us, return %.1f us)",
        trial,
        1e3 * (back - firstReturn),
        1e3 * (measured.returnSeconds() - measured.firstReturnSeconds()),
        1e3 * (back - truth.lossSeconds()),
        1e3 * errorMillis(),
        1e3 * uncertaintyMillis(),
        1e6 * (measured.lossSeconds() - truth.lossSeconds()),
        1e6 * (measured.returnSeconds() - back));
  }
}
