package mainsgap.cli;

import java.util.ArrayList;
import java.util.List;
import mainsgap.bench.DiscoveryEnd;
import mainsgap.bench.FoundInstrument;
import mainsgap.bench.FoundInstrument.Known;

/** What was found, as a table: one row for each link. */
final class DiscoveryText {
  private DiscoveryText() {}

  static String of(DiscoveryEnd end) {
    if (end.instruments().isEmpty()) {
      return "";
    }
    TextTable table =
        new TextTable(
            TextTable.Side.LEFT, TextTable.Side.LEFT, TextTable.Side.LEFT, TextTable.Side.LEFT);
    table.add("link", "from", "profile", "instrument");
    List<String> remarks = new ArrayList<>();
    for (FoundInstrument one : end.instruments()) {
      add(table, one);
      if (!one.remark().isEmpty()) {
        remarks.add(TextWrap.hanging("  - ", one.name() + ": " + one.remark()));
      }
    }
    StringBuilder text = new StringBuilder(table.toString());
    remarks.forEach(remark -> text.append(remark).append('\n'));
    return text.append(hint(end)).toString();
  }

  private static void add(TextTable table, FoundInstrument one) {
    String profile = one.profile().isEmpty() ? "-" : one.profile();
    if (one.links().isEmpty()) {
      table.add("-", FoundInstrument.Source.ANNOUNCED.word(), profile, who(one));
      return;
    }
    boolean first = true;
    for (FoundInstrument.Link link : one.links()) {
      table.add(
          link.resource(),
          link.source().word(),
          first ? profile : "\"",
          first ? who(one) : "the same, by another link");
      first = false;
    }
  }

  private static String who(FoundInstrument one) {
    if (one.known() == Known.NO) {
      return one.name() + ", not known";
    }
    String identity =
        one.manufacturer()
            + " "
            + one.model()
            + (one.serial().isEmpty() ? "" : ", serial " + one.serial())
            + (one.firmware().isEmpty() ? "" : ", firmware " + one.firmware());
    return identity.strip() + (one.known() == Known.ANNOUNCED ? " (announced)" : "");
  }

  private static String hint(DiscoveryEnd end) {
    boolean unnamed = end.instruments().stream().anyMatch(one -> one.profile().isEmpty());
    return unnamed
        ? "\n"
            + TextWrap.paragraph(
                "A profile stands there where one names the instrument. Which other one fits:"
                    + " mainsgap instruments --probe RESOURCE")
            + "\n"
        : "";
  }
}
