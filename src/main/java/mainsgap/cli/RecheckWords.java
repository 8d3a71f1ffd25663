package mainsgap.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.cli.TextTable.Side;
import mainsgap.session.Session;
import org.jspecify.annotations.Nullable;

/** What a recheck found, for people and for scripts. */
final class RecheckWords {
  private RecheckWords() {}

  static String text(Session session, List<Recheck.Difference> differences) {
    TextTable table = new TextTable(Side.LEFT, Side.LEFT);
    table.add("session", session.file().toString());
    table.add(
        "made",
        session.header().startedAt()
            + " by Mainsgap "
            + session.header().programVersion()
            + (session.header().simulated() ? ", simulated" : ""));
    table.add("unit", session.header().unit());
    table.add("ending", session.ending().sentence());
    table.add("seals", session.entryCount() + " entries, all intact");
    table.add("last seal", session.lastSeal());
    table.add(
        "figures",
        session.trials().size()
            + " trials measured again: "
            + (differences.isEmpty()
                ? "all figures as logged"
                : differences.size() + " figures differ"));
    return table + (differences.isEmpty() ? "" : "\n" + tableOf(differences));
  }

  static String json(Session session, List<Recheck.Difference> differences) {
    List<Map<String, @Nullable Object>> named = new ArrayList<>();
    for (Recheck.Difference difference : differences) {
      Map<String, @Nullable Object> values = new LinkedHashMap<>();
      values.put("number", difference.trial());
      values.put("figure", difference.figure());
      values.put("logged", difference.logged());
      values.put("measured", difference.measured());
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
    table.add("trial", "figure", "logged", "measured again");
    differences.forEach(
        difference ->
            table.add(
                Integer.toString(difference.trial()),
                difference.figure(),
                String.valueOf(difference.logged()),
                String.valueOf(difference.measured())));
    return table;
  }
}
