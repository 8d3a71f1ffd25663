package mainsgap.desk.findings;

import java.util.ArrayList;
import java.util.List;
import mainsgap.report.TrialWords;
import mainsgap.report.UnitSeries;
import mainsgap.session.LoggedTrial;

/**
 * A trial in the table.
 *
 * @param key which one
 * @param unit the unit's name, told apart from those of the other sessions shown
 * @param session that holds it
 * @param trial as it was logged
 * @param words what the table says
 */
record TrialRow(
    TrialKey key, String unit, OpenedSession session, LoggedTrial trial, TrialWords words) {

  /** All trials of {@code sessions}, in their order. */
  static List<TrialRow> of(List<OpenedSession> sessions) {
    List<String> names =
        UnitSeries.namesOf(sessions.stream().map(one -> one.kept().session().header()).toList());
    List<TrialRow> rows = new ArrayList<>();
    for (int i = 0; i < sessions.size(); i++) {
      OpenedSession session = sessions.get(i);
      String unit = names.get(i);
      for (LoggedTrial trial : session.kept().session().trials()) {
        TrialKey key = new TrialKey(session.file(), trial.number());
        rows.add(new TrialRow(key, unit, session, trial, TrialWords.of(trial)));
      }
    }
    return List.copyOf(rows);
  }

  /** Whether its trace can be aligned with others. */
  boolean hasLoss() {
    return trial.number("lossMs").isPresent();
  }

  /** The transfer time, or what its record shows at least; 0 where there is none. */
  double millis() {
    return trial.number("transferTimeMs").orElse(trial.number("transferTimeAtLeastMs").orElse(0));
  }
}
