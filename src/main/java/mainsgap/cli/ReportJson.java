package mainsgap.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.report.page.ReportedSession;
import mainsgap.session.Session;
import org.jspecify.annotations.Nullable;

/** What was written as a report, as JSON; scripts depend on the names. */
final class ReportJson {
  private ReportJson() {}

  /** The document. */
  static String of(Path file, ReportForm form, List<ReportedSession> sessions) {
    Map<String, @Nullable Object> document = new LinkedHashMap<>();
    document.put("written", Map.of(form.word(), file.toString()));
    document.put(
        "sessions", sessions.stream().map(reported -> session(reported.session())).toList());
    return Json.document(document);
  }

  private static Map<String, @Nullable Object> session(Session session) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("session", session.file().toString());
    values.put("unit", session.header().unit());
    values.put("entries", session.entryCount());
    values.put("lastSeal", session.lastSeal());
    values.put("trials", session.trials().size());
    return values;
  }
}
