package mainsgap.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
