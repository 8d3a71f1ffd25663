package mainsgap.desk.pictures;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.TrialReport;
import mainsgap.signal.Event;
import mainsgap.statistics.Sample;
import mainsgap.statistics.ToleranceFactor;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.TrialVerdict;
import mainsgap.transfer.outcome.FurtherInterruptions;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.NoInterruption;
import mainsgap.transfer.outcome.NoReturn;
import mainsgap.transfer.outcome.OtherChannels;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.transfer.outcome.Supplies;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/** Trials of invented units, put together in memory. */
final class InventedTrials {
  static final DeclaredClaim TEN = DeclaredClaim.ofMillis(10, "10 ms");
  private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
  private static final Supplies SUPPLIES = new Supplies(50, 0.0, 0.0, 0.0);

  private final @Nullable DeclaredClaim claim;
  private final List<TrialReport> trials = new ArrayList<>();

  InventedTrials(@Nullable DeclaredClaim claim) {
    this.claim = claim;
  }

  InventedTrials add(Outcome outcome) {
    Judgement judgement = claim == null ? null : TrialVerdict.judge(outcome, claim).orElse(null);
    int number = trials.size() + 1;
    trials.add(new TrialReport(number, NOON.plusSeconds(60L * number), outcome, judgement));
    return this;
  }

  InventedTrials setLastAside(String reason) {
    TrialReport last = trials.remove(trials.size() - 1);
    trials.add(
        new TrialReport(
            last.number(), last.at(), last.outcome(), last.judgement(), reason, List.of(), null));
    return this;
  }

  List<TrialReport> list() {
    return List.copyOf(trials);
  }

  /** The figures that a picture shows: the bound of the times and the guarded limit. */
  RunningFigures figures() {
    double[] times =
        trials.stream()
            .filter(TrialReport::counts)
            .filter(trial -> trial.outcome() instanceof Measured)
            .mapToDouble(trial -> ((Measured) trial.outcome()).transferMillis())
            .toArray();
    double u =
        trials.stream()
            .filter(trial -> trial.outcome() instanceof Measured)
            .mapToDouble(trial -> ((Measured) trial.outcome()).uncertaintyMillis())
            .max()
            .orElse(0);
    Double bound =
        times.length < 3 ? null : (Double) ToleranceFactor.upperBound(Sample.of(times), 0.95, 0.95);
    Double guarded = claim == null || u == 0 ? null : (Double) (claim.millis() - u);
    return new RunningFigures(
        times.length, null, null, null, null, bound, guarded, null, null, List.of());
  }

  /** One of every kind. */
  static InventedTrials ofEveryKind() {
    return new InventedTrials(TEN)
        .add(measured(8.42, 0.1, 12))
        .add(measured(9.95, 0.1, 77))
        .add(measured(10.6, 0.3, 140))
        .add(new Refused("the output is clipped: choose 400 V or more"))
        .add(measured(8.1, 0.1, 201))
        .setLastAside("the clip had come off")
        .add(noInterruption())
        .add(noReturn(212.4))
        .add(measured(8.6, 0.2, 318));
  }

  /** So many about a mean, with a fixed seed. */
  static InventedTrials many(int count, double meanMillis, double spreadMillis) {
    Random random = new Random(count);
    InventedTrials trials = new InventedTrials(TEN);
    for (int i = 0; i < count; i++) {
      double millis = meanMillis + spreadMillis * random.nextGaussian();
      trials.add(measured(millis, 0.08, 360 * random.nextDouble()));
    }
    return trials;
  }

  static Measured measured(double millis, double uMillis, double angleDegrees) {
    return measured(millis, uMillis, angleDegrees, OtherChannels.NONE);
  }

  static Measured measured(
      double millis, double uMillis, double angleDegrees, OtherChannels others) {
    double loss = 0.001;
    return new Measured(
        Event.LOSS,
        loss,
        loss,
        loss + millis / 1e3,
        loss + millis / 1e3,
        millis,
        new UncertaintyBudget(
            List.of(new UncertaintyBudget.Component("change points", uMillis / 2, false)), 2),
        FurtherInterruptions.NONE,
        millis,
        millis,
        millis + 10,
        angleDegrees,
        SUPPLIES,
        null,
        others);
  }

  static NoReturn noReturn(double atLeastMillis) {
    return new NoReturn(
        Event.LOSS, 0.001, 0.001, atLeastMillis, 0.1, 45, atLeastMillis, SUPPLIES, false, null);
  }

  static NoInterruption noInterruption() {
    return new NoInterruption(
        Event.LOSS, 0.25, "the frequency changed from 50.00 Hz to 50.21 Hz", 0.001, 270, SUPPLIES);
  }
}
