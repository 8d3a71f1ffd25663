package mainsgap.desk.findings;

import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.report.AlignedTrace;
import mainsgap.session.SessionReader;

/**
 * Reads raw captures of trials, held against their seals, and keeps the last few. Any thread but
 * that of the UI may call it.
 */
final class Captures {
  private final Map<String, AlignedTrace> kept =
      new LinkedHashMap<>(TraceChoice.MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, AlignedTrace> eldest) {
          return size() > TraceChoice.MOST;
        }
      };

  /**
   * The trace of a trial.
   *
   * @throws mainsgap.session.SessionException with a sentence where it cannot be read
   * @throws mainsgap.report.ReportException with a sentence where there is nothing to align by
   */
  synchronized AlignedTrace trace(TrialRow row) {
    String key = row.unit() + "\n" + row.trial().seal();
    AlignedTrace found = kept.get(key);
    if (found != null) {
      return found;
    }
    try (SessionReader reader = SessionReader.open(row.session().file())) {
      AlignedTrace read =
          AlignedTrace.of(
              row.unit(),
              row.session().kept().session().header(),
              row.trial(),
              reader.capture(row.trial().number()));
      kept.put(key, read);
      return read;
    }
  }
}
