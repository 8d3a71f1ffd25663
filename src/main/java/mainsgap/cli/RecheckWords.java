package mainsgap.cli;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.cli.TextTable.Side;
import mainsgap.report.Readings;
import mainsgap.session.Recheck;
import mainsgap.session.Session;
import org.jspecify.annotations.Nullable;

/** What a recheck found, for people and for scripts. */
final class RecheckWords {
  private RecheckWords() {}

  static String text(Recheck recheck) {
    Session session = recheck.session();
    List<Recheck.Difference> differences = recheck.differences();
    String made =
        session.header().startedAt().truncatedTo(ChronoUnit.SECONDS)
            + " by Mainsgap "
            + session.header().programVersion()
            + (session.header().simulated() ? ", simulated" : "");
    String figures =
        Readings.counted(session.trials().size(), "trial")
            + " measured again: "
            + (differences.isEmpty()
                ? "all figures as stored"
                : differences.size()
                    + (differences.size() == 1 ? " figure differs" : " figures differ"));
    return TextWrap.labelled("session", session.file().toString())
        + TextWrap.labelled("made", made)
        + TextWrap.labelled("unit", session.header().unit())
        + TextWrap.labelled("ending", session.ending().sentence())
        + TextWrap.labelled("seals", session.entryCount() + " entries, all intact")
        + TextWrap.labelled("last seal", session.lastSeal())
        + TextWrap.labelled("figures", figures)
        + (differences.isEmpty() ? "" : "\n" + tableOf(differences));
  }

  static String json(Recheck recheck) {
    Session session = recheck.session();
    List<Recheck.Difference> differences = recheck.differences();
    List<Map<String, @Nullable Object>> named = new ArrayList<>();
    for (Recheck.Difference difference : differences) {
      Map<String, @Nullable Object> values = new LinkedHashMap<>();
      values.put("number", difference.trialNumber());
      values.put("figure", difference.figure());
      values.put("stored", difference.stored());
      values.put("found", difference.found());
      named.add(values);
    }
    Map<String, @Nullable Object> document = new LinkedHashMap<>();
    document.put("session", session.file().toString());
    document.put("unit", session.header().unit());
    document.put("entries", session.entryCount());
    document.put("lastSeal", session.lastSeal());
    document.put("trials", session.trials().size());
    document.put("differences", named);
    return Json.document(document);
  }

  private static TextTable tableOf(List<Recheck.Difference> differences) {
    TextTable table = new TextTable(Side.RIGHT, Side.LEFT, Side.LEFT, Side.LEFT);
    table.add("trial", "figure", "stored", "now");
    differences.forEach(
        difference ->
            table.add(
                Integer.toString(difference.trialNumber()),
                difference.figure(),
                String.valueOf(difference.stored()),
                String.valueOf(difference.found())));
    return table;
  }
}
