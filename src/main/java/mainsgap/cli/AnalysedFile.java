package mainsgap.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.transfer.MeasuringTask;
import mainsgap.transfer.VoltageTolerance;
import org.jspecify.annotations.Nullable;

/** A capture file and what its measurement gave. */
record AnalysedFile(Path file, JudgedCapture capture) {

  /** Whether it counts as measured and, where a time is declared, passed. */
  boolean isGood(boolean judged) {
    return !capture.isRefused() && (!judged || capture.hasPassed());
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
                    + file
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
                analysed.file.toString(),
                analysed.capture.outcome(),
                analysed.capture.judgement()));
    return table.toString();
  }
}
