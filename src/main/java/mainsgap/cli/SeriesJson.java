package mainsgap.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.SetAsideTrial;
import mainsgap.bench.TrialReport;
import mainsgap.transfer.outcome.Figures;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/** A finished series as JSON; scripts depend on the names. */
final class SeriesJson {
  private SeriesJson() {}

  /** The document. */
  static String of(SeriesEnd end, @Nullable Double ratedMillis) {
    Map<String, @Nullable Object> series = new LinkedHashMap<>();
    series.put("session", end.session() == null ? null : end.session().toString());
    series.put("unit", end.unit());
    series.put("ratedMs", ratedMillis);
    List<Map<String, @Nullable Object>> trials = new ArrayList<>();
    MeasuringTask task = end.task();
    if (task != null) {
      end.trials().forEach(trial -> trials.add(trial(trial, task)));
    }
    series.put("trials", trials);
    series.put("summary", summary(end.figures()));
    return Json.document(series);
  }

  private static Map<String, @Nullable Object> trial(TrialReport trial, MeasuringTask task) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("file", null);
    values.putAll(Figures.of(trial.outcome(), trial.judgement(), task.nominalVolts()));
    BudgetJson.put(trial.outcome(), values);
    values.put("voltageTolerance", ToleranceJson.of(trial.outcome(), task));
    values.put("number", trial.number());
    values.put("state", "logged");
    return values;
  }

  private static Map<String, @Nullable Object> summary(RunningFigures figures) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("n", figures.measured());
    values.put("meanMs", figures.meanMillis());
    values.put("standardDeviationMs", figures.standardDeviationMillis());
    values.put("medianMs", figures.medianMillis());
    values.put("maxMs", figures.maxMillis());
    values.put("upperToleranceBoundMs", figures.upperToleranceBoundMillis());
    values.put("verdict", figures.verdict() == null ? null : figures.verdict().name());
    values.put("reason", figures.reason());
    values.put("setAside", figures.setAside().stream().map(SetAsideTrial::number).toList());
    return values;
  }
}
