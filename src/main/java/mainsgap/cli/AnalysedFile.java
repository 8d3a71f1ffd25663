package mainsgap.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.report.Readings;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.tolerance.VoltageTolerance;
import org.jspecify.annotations.Nullable;

/**
 * A capture file and what its measurement gave.
 *
 * @param event which of several events of the file, from 1; 0 where only one is measured
 * @param beside what has to be told beside its time
 */
record AnalysedFile(Path file, int event, JudgedCapture capture, List<String> beside) {

  /** Whether it counts as measured and, where a time is declared, passed. */
  boolean isGood(boolean judged) {
    return !capture.isRefused() && (!judged || capture.hasPassed());
  }

  private String name() {
    return event == 0 ? file.toString() : file + " event " + event + kind();
  }

  /** Which way mains went, where it is known. */
  private String kind() {
    Object word = capture.figures().get("event");
    return word == null ? "" : ", " + word;
  }

  /** All files as one JSON document; scripts depend on the names. */
  static String json(List<AnalysedFile> files, MeasuringTask task) {
    List<Map<String, @Nullable Object>> captures = new ArrayList<>();
    for (AnalysedFile analysed : files) {
      Map<String, @Nullable Object> values = new LinkedHashMap<>();
      values.put("file", analysed.file.toString());
      values.putAll(analysed.capture.figures());
      BudgetJson.put(analysed.capture.outcome(), values);
      values.put("voltageTolerance", ToleranceJson.of(analysed.capture.outcome(), task));
      captures.add(values);
    }
    Map<String, @Nullable Object> document = new LinkedHashMap<>();
    document.put("captures", captures);
    return Json.document(document);
  }

  /** Where the gap stands on the tolerance curves, and what rides through it, a line each. */
  String tolerance(MeasuringTask task) {
    return VoltageTolerance.of(capture.outcome(), task)
        .map(
            found ->
                "\nvoltage tolerance, "
                    + name()
                    + "\n"
                    + listed(found.sentences())
                    + "what rides through\n"
                    + listed(found.loadSentences()))
        .orElse("");
  }

  private static String listed(List<String> sentences) {
    StringBuilder text = new StringBuilder();
    sentences.forEach(sentence -> text.append(TextWrap.hanging("  - ", sentence)).append('\n'));
    return text.toString();
  }

  /** All files as a table. */
  static String text(List<AnalysedFile> files) {
    TrialTable table = new TrialTable("file", TextTable.Side.LEFT);
    files.forEach(
        analysed ->
            table.add(
                analysed.name(),
                analysed.capture.outcome(),
                analysed.capture.judgement(),
                analysed.beside));
    ReturnTable returns = new ReturnTable("file", TextTable.Side.LEFT);
    files.forEach(analysed -> returns.add(analysed.name(), analysed.capture.outcome()));
    StringBuilder text = new StringBuilder(table.toString() + returns);
    files.forEach(analysed -> text.append(analysed.laterEvents()));
    return text.toString();
  }

  /** Where only the first event is measured, what comes after it is told, since it is judged. */
  private String laterEvents() {
    if (event > 0 || !(capture.outcome() instanceof Measured measured)) {
      return "";
    }
    int later = measured.furtherInterruptions().count();
    return later == 0
        ? ""
        : TextWrap.hanging(
                "  ",
                name()
                    + " holds "
                    + Readings.counted(later, "further interruption")
                    + ", and the worst is judged with the first event: --every-event measures each"
                    + " event by itself")
            + "\n";
  }

  /** The uncertainty of its time, line by line; empty where there is none. */
  String budget() {
    return BudgetText.of("file " + name(), capture.outcome());
  }

  /** All figures of its return; empty where there was none. */
  String returnFigures() {
    return ReturnFiguresText.of("file " + name(), capture.outcome());
  }
}
