package mainsgap.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.transfer.Measured;
import mainsgap.transfer.MeasuringTask;
import mainsgap.transfer.VoltageTolerance;
import org.jspecify.annotations.Nullable;

/**
 * A capture file and what its measurement gave.
 *
 * @param event which of several events of the file, from 1; 0 where only one is measured
 */
record AnalysedFile(Path file, int event, JudgedCapture capture) {

  /** Whether it counts as measured and, where a time is declared, passed. */
  boolean isGood(boolean judged) {
    return !capture.isRefused() && (!judged || capture.hasPassed());
  }

  private String name() {
    return event == 0 ? file.toString() : file + " event " + event;
  }

  /** All files as one JSON document; scripts depend on the names. */
  static String json(List<AnalysedFile> files) {
    List<Map<String, @Nullable Object>> captures = new ArrayList<>();
    for (AnalysedFile analysed : files) {
      Map<String, @Nullable Object> values = new LinkedHashMap<>();
      values.put("file", analysed.file.toString());
      values.putAll(analysed.capture.figures());
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
            table.add(analysed.name(), analysed.capture.outcome(), analysed.capture.judgement()));
    ReturnTable returns = new ReturnTable("file", TextTable.Side.LEFT);
    files.forEach(analysed -> returns.add(analysed.name(), analysed.capture.outcome()));
    return table.toString() + returns;
  }

  /** The uncertainty of a transfer time, line by line; empty where none was measured. */
  String budget() {
    return capture.outcome() instanceof Measured measured
        ? "\nuncertainty, " + name() + "\n" + BudgetText.of(measured.budget())
        : "";
  }
}
