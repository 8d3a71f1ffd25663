package mainsgap.cli;

import java.util.Locale;
import mainsgap.cli.TextTable.Side;
import mainsgap.report.Readings;
import mainsgap.transfer.outcome.Cleanness;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Supplies;
import org.jspecify.annotations.Nullable;

/** All figures of one return, a line each; "-" where the capture cannot tell one. */
final class ReturnFiguresText {
  private static final String NONE = "-";

  private final TextTable table = new TextTable(Side.LEFT, Side.RIGHT);

  private ReturnFiguresText() {}

  /** The figures of {@code outcome} under its name; empty where it has none. */
  static String of(String name, Outcome outcome) {
    if (!(outcome instanceof Measured measured) || measured.cleanness() == null) {
      return "";
    }
    ReturnFiguresText text = new ReturnFiguresText();
    text.steps(measured.supplies());
    text.shape(measured.cleanness());
    text.course(measured.cleanness());
    return "\nall figures of the return, " + name + "\n" + text.table;
  }

  private void steps(Supplies supplies) {
    add("phase step", "%+.2f°", supplies.phaseStepDegrees());
    add("frequency step", "%+.4f Hz", hertz(supplies.frequencyStepMillihertz()));
    add("amplitude step", "%+.2f %%", supplies.amplitudeStepPercent());
  }

  private static @Nullable Double hertz(@Nullable Double millihertz) {
    return millihertz == null ? null : (Double) (millihertz / 1e3);
  }

  private void shape(Cleanness clean) {
    String least = clean.clippedAfterReturn() ? ">= " : "";
    add("overshoot above nominal peak", least + "%.1f %%", clean.peakOvershootPercent());
    add("undershoot below nominal peak", "%.1f %%", clean.peakUndershootPercent());
    add("settled level against nominal", "%+.2f %%", clean.settledDeviationPercent());
    add("DC offset of nominal RMS", "%+.2f %%", clean.dcOffsetPercent());
    add("crest factor", "%.3f", clean.crestFactor());
    distortion("THD before", clean.thdBefore());
    distortion("THD after", clean.thdAfter());
  }

  private void course(Cleanness clean) {
    String least = clean.clippedAfterReturn() ? ">= " : "";
    add("settles within ±10 % after", "%.2f ms", clean.settlingMillis());
    add("settles within ±3 % after", "%.2f ms", clean.settlingTo3PercentMillis());
    table.add("re-strikes", Integer.toString(clean.restrikes()));
    add("steepest change", least + "%.3g V/µs", clean.steepestVoltsPerMicrosecond());
    add("residual over 1 cycle", least + "%.1f %%", clean.residual().oneCyclePercent());
    add("residual over 2 cycles", least + "%.1f %%", clean.residual().twoCyclesPercent());
    add("residual over 5 cycles", least + "%.1f %%", clean.residual().fiveCyclesPercent());
  }

  private void distortion(String name, Cleanness.@Nullable Distortion found) {
    table.add(
        name,
        found == null
            ? NONE
            : String.format(
                Locale.ROOT,
                "%.2f %% over %s",
                found.percent(),
                Readings.counted(found.cycles(), "cycle")));
  }

  private void add(String name, String form, @Nullable Double value) {
    table.add(name, value == null ? NONE : Readings.formed(form, value));
  }
}
