package mainsgap.bench;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import mainsgap.settings.SettingsTable;
import mainsgap.settings.SettingsText;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.claim.DeclaredClaim.Kind;

/** The declared transfer time in a rig file. */
final class ClaimTable {
  static final String[] KEYS = {
    "printed", "millis", "relation", "kind", "definition", "source", "date"
  };

  private static final String UNKNOWN = "unknown";
  private static final double LONGEST_MILLIS = 3_600_000;
  private static final String BELOW = "<";
  private static final String UP_TO = "<=";

  private ClaimTable() {}

  static DeclaredClaim read(SettingsTable table) {
    double millis = table.number("millis", 0, LONGEST_MILLIS);
    String relation = table.optionalText("relation").orElse(UP_TO);
    if (!relation.equals(BELOW) && !relation.equals(UP_TO)) {
      throw table.complaint("relation", "is '" + relation + "'; allowed: <, <=");
    }
    return new DeclaredClaim(
        table.optionalText("printed").orElse(relation + " " + Words.plain(millis) + " ms"),
        millis,
        relation.equals(BELOW),
        table.has("kind") ? table.choice("kind", Kind.class) : Kind.UNSTATED,
        table.optionalText("definition").orElse(UNKNOWN),
        table.optionalText("source").orElse(UNKNOWN),
        date(table));
  }

  static void write(DeclaredClaim claim, SettingsText text) {
    text.table("claim")
        .text("printed", claim.asPrinted())
        .number("millis", claim.millis())
        .text("relation", claim.strictlyBelow() ? BELOW : UP_TO)
        .text("kind", Words.hyphened(claim.kind()))
        .text("definition", claim.definition())
        .text("source", claim.source())
        .text("date", claim.date());
  }

  private static String date(SettingsTable table) {
    String date = table.optionalText("date").orElse(UNKNOWN);
    if (!date.equals(UNKNOWN)) {
      try {
        LocalDate unused = LocalDate.parse(date);
      } catch (DateTimeParseException e) {
        throw table.complaint(
            "date", "is '" + date + "'; allowed: a date such as 2026-11-25, or unknown");
      }
    }
    return date;
  }
}
