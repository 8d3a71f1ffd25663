package mainsgap.transfer.outcome;

import java.util.List;
import mainsgap.signal.Event;

/** Outcomes for the tests of verdicts: only what is judged varies. */
public final class Outcomes {
  /** Where the loss lies on the time axis of all of them. */
  private static final double LOSS_SECONDS = 0.1;

  private static final Supplies SUPPLIES = new Supplies(50, null, null, null);

  private Outcomes() {}

  /** A gap that is usable at once. */
  public static Measured gap(double transferMillis, double uncertaintyMillis) {
    return new Gap(transferMillis, uncertaintyMillis).outcome();
  }

  public static NoReturn noReturn(
      double atLeastMillis, double uncertaintyMillis, double bounceMillis) {
    return new NoReturn(
        Event.LOSS,
        LOSS_SECONDS,
        LOSS_SECONDS + bounceMillis / 1e3,
        atLeastMillis,
        uncertaintyMillis,
        90,
        atLeastMillis,
        SUPPLIES,
        false,
        null);
  }

  public static NoInterruption noInterruption(double shortestVisibleMillis) {
    return new NoInterruption(
        Event.LOSS, shortestVisibleMillis, "the phase steps by 20°", LOSS_SECONDS, 90, SUPPLIES);
  }

  /** The budget of one component with the coverage factor 2. */
  public static UncertaintyBudget budget(double expandedMillis, boolean common) {
    return new UncertaintyBudget(
        List.of(new UncertaintyBudget.Component("change points", expandedMillis / 2, common)), 2);
  }

  /** A measured gap, to be made up step by step. */
  public record Gap(
      double transferMillis,
      UncertaintyBudget budget,
      double bounceMillis,
      FurtherInterruptions furtherInterruptions,
      double usableMillis) {

    public Gap(double transferMillis, double uncertaintyMillis) {
      this(
          transferMillis,
          Outcomes.budget(uncertaintyMillis, true),
          0,
          FurtherInterruptions.NONE,
          transferMillis);
    }

    public Gap of(UncertaintyBudget other) {
      return new Gap(transferMillis, other, bounceMillis, furtherInterruptions, usableMillis);
    }

    public Gap bouncing(double millis) {
      return new Gap(transferMillis, budget, millis, furtherInterruptions, usableMillis);
    }

    public Gap withFurtherInterruptions(int count) {
      return with(FurtherInterruptions.ofUnknownLength(count));
    }

    public Gap with(FurtherInterruptions further) {
      return new Gap(transferMillis, budget, bounceMillis, further, usableMillis);
    }

    public Gap usableAfter(double millis) {
      return new Gap(transferMillis, budget, bounceMillis, furtherInterruptions, millis);
    }

    public Measured outcome() {
      double returnSeconds = LOSS_SECONDS + transferMillis / 1e3;
      return new Measured(
          Event.LOSS,
          LOSS_SECONDS,
          LOSS_SECONDS + bounceMillis / 1e3,
          returnSeconds,
          returnSeconds,
          transferMillis,
          budget,
          furtherInterruptions,
          transferMillis,
          Double.isNaN(usableMillis) ? null : (Double) usableMillis,
          null,
          90,
          SUPPLIES,
          null,
          OtherChannels.NONE);
    }
  }
}
