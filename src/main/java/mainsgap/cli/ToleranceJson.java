package mainsgap.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.tolerance.LoadRideThrough;
import mainsgap.transfer.tolerance.ToleranceFinding;
import mainsgap.transfer.tolerance.VoltageTolerance;
import org.jspecify.annotations.Nullable;

/** Where a gap and its return stand on the tolerance curves; scripts depend on the names. */
final class ToleranceJson {
  private ToleranceJson() {}

  /** The findings; null where the outcome has no gap to hold against anything. */
  static @Nullable Map<String, @Nullable Object> of(Outcome outcome, MeasuringTask task) {
    return VoltageTolerance.of(outcome, task).map(ToleranceJson::of).orElse(null);
  }

  private static Map<String, @Nullable Object> of(VoltageTolerance found) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("gap", found.curves().stream().map(ToleranceJson::finding).toList());
    values.put("overshoot", found.swells().stream().map(ToleranceJson::finding).toList());
    values.put("breakTime", found.breakTime().words());
    values.put("dipClass", found.dipClass());
    values.put("notes", found.notes());
    values.put("loads", loads(found));
    return values;
  }

  private static Map<String, @Nullable Object> finding(ToleranceFinding finding) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("curve", finding.curve());
    values.put("standing", word(finding.standing()));
    values.put("indicative", finding.isIndicative());
    values.put("sentence", finding.sentence());
    return values;
  }

  private static List<Map<String, @Nullable Object>> loads(VoltageTolerance found) {
    return found.loads().stream().map(load -> load(load, found)).toList();
  }

  private static Map<String, @Nullable Object> load(LoadRideThrough load, VoltageTolerance found) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("load", load.load());
    values.put("answer", word(load.answer(found.gap())));
    values.put("sentence", load.sentence(found.gap()));
    return values;
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
