package mainsgap.transfer;

/**
 * Bounds the return of an output whose cycle rests: while the settled supply lies at what was left
 * on the load, nothing tells when it came. The return lies between the last place at which the load
 * was not fed although the supply would have shown, and the first one at which it was.
 */
final class RestReturn {
  /** Supply and residue are told apart where they lie this share of nominal peak apart. */
  private static final double TOLD_APART_SHARE_OF_PEAK = 0.15;

  /** The supply is followed for so long. */
  private static final double FED_SECONDS = 0.3e-3;

  /** A share of strays, about the supply's own steps. */
  private static final double FED_SHARE = 0.9;

  /** The supply's own steps are known to this. */
  private static final double OWN_STEP_SECONDS = 0.15e-3;

  /** Of the width for a standard uncertainty, so that 1.96 times it holds 95 % of places alike. */
  private static final double HELD_SHARE = 0.95 / (2 * 1.96);

  private final Recording recording;
  private final Residue residue;
  private final Supply after;

  RestReturn(Recording recording, Residue residue, Supply after) {
    this.recording = recording;
    this.residue = residue;
    this.after = after;
  }

  /**
   * The return; {@code found} where it lies in no rest.
   *
   * @param fromSeconds the load is not fed before
   */
  Edge bounded(double fromSeconds, Edge found) {
    if (isVisible(found)) {
      return found;
    }
    int from = Math.max(0, (int) Math.ceil(recording.time().indexAt(fromSeconds)));
    int fed = firstFed(from);
    int dead = fed - 1;
    while (dead > from && !isDead(dead)) {
      dead--;
    }
    double width = (fed - dead) * recording.time().intervalSeconds();
    double first = recording.time().secondsAt(dead);
    double last = recording.time().secondsAt(fed);
    boolean isFound =
        found.seconds() >= first
            && found.seconds() <= last
            && width < 4 * (found.standardSeconds() + recording.time().intervalSeconds());
    if (fed >= recording.length() || isFound) {
      return found;
    }
    return new Edge(
        (first + last) / 2,
        recording.time().intervalSeconds() / Math.sqrt(12),
        HELD_SHARE * width,
        0,
        found.shape(),
        found.window(),
        found.laterVolts());
  }

  /** A make away from the supply's rest and from its own steps shows by itself. */
  private boolean isVisible(Edge found) {
    int about = (int) Math.round(recording.time().indexAt(found.seconds()));
    int reach = recording.samplesIn(OWN_STEP_SECONDS);
    int to = Math.min(recording.length() - 1, about + reach);
    for (int i = Math.max(0, about - reach); i <= to; i++) {
      if (!isToldApart(i)) {
        return false;
      }
    }
    return true;
  }

  private int firstFed(int from) {
    int span = recording.samplesIn(FED_SECONDS);
    int i = from;
    while (i < recording.length() && !(isFed(i) && isFedUpTo(i, i + span))) {
      i++;
    }
    return i;
  }

  private boolean isFedUpTo(int from, int to) {
    int told = 0;
    int fed = 0;
    for (int i = from; i < Math.min(to, recording.length()); i++) {
      told += isToldApart(i) ? 1 : 0;
      fed += isFed(i) ? 1 : 0;
    }
    return fed >= FED_SHARE * told;
  }

  private double suppliedAt(int index) {
    return after.model().voltsAt(recording.time().secondsAt(index));
  }

  private double leftAt(int index) {
    return residue.voltsAt(recording.time().secondsAt(index));
  }

  private boolean isToldApart(int index) {
    double apart = TOLD_APART_SHARE_OF_PEAK * recording.peakVolts();
    return Math.abs(suppliedAt(index) - leftAt(index)) > apart;
  }

  private boolean isNearerToSupply(int index) {
    double volts = recording.volts()[index];
    return Math.abs(volts - suppliedAt(index)) < Math.abs(volts - leftAt(index));
  }

  private boolean isFed(int index) {
    return isToldApart(index) && isNearerToSupply(index);
  }

  /** And so for a while: about its own steps the supply is not known to a sample. */
  private boolean isDead(int index) {
    for (int i = index; i > Math.max(0, index - recording.samplesIn(FED_SECONDS)); i--) {
      if (!isToldApart(i) || isNearerToSupply(i)) {
        return false;
      }
    }
    return true;
  }
}
