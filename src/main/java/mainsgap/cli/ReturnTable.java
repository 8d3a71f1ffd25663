package mainsgap.cli;

import java.util.Locale;
import mainsgap.cli.TextTable.Side;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/** How clean each return is, a line each: a word, and beside it the figures that it comes from. */
final class ReturnTable {
  private static final String NONE = "-";

  private final TextTable table;
  private boolean isEmpty = true;

  /** An empty table whose first column is headed {@code what} and stands at {@code side}. */
  ReturnTable(String what, Side side) {
    this.table =
        new TextTable(
            side,
            Side.LEFT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.RIGHT,
            Side.LEFT);
    table.add(
        what,
        "return",
        "overshoot",
        "undershoot",
        "phase",
        "THD",
        "settles",
        "residual",
        "because of");
  }

  /** Adds a line where there was a return whose cleanness was taken. */
  void add(String name, Outcome outcome) {
    if (outcome instanceof Measured measured && measured.cleanness() != null) {
      isEmpty = false;
      add(name, measured, measured.cleanness());
    }
  }

  private void add(String name, Measured measured, Cleanness clean) {
    Cleanness.Distortion thd = clean.thdAfter();
    Double step = measured.supplies().phaseStepDegrees();
    table.add(
        name,
        clean.word().name().toLowerCase(Locale.ROOT),
        (clean.clippedAfterReturn() ? ">= " : "") + percent(clean.peakOvershootPercent()),
        percent(clean.peakUndershootPercent()),
        step == null ? NONE : Readings.formed("%+.1f°", step),
        thd == null ? NONE : percent(thd.percent()),
        clean.settlingMillis() == null
            ? "-"
            : String.format(Locale.ROOT, "%.2f ms", clean.settlingMillis()),
        percent(clean.residual().oneCyclePercent()),
        clean.reasons().isEmpty() ? NONE : String.join(", ", clean.reasons()));
  }

  private static String percent(@Nullable Double value) {
    return value == null ? NONE : Readings.formed("%.1f %%", value);
  }

  /** The table; empty where no return was added. */
  @Override
  public String toString() {
    return isEmpty
        ? ""
        : "\nhow clean the return is (src/docs/method.md has the rule of the word)\n" + table;
  }
}
