package mainsgap.report.page;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times of day on a page: UTC, which holds wherever it is read. */
final class PageTime {
  private static final DateTimeFormatter FORM =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

  private PageTime() {}

  /** To a second, with the name of the zone. */
  static String of(Instant instant) {
    return inColumn(instant) + " UTC";
  }

  /** The same for a column whose head names the zone. */
  static String inColumn(Instant instant) {
    return FORM.format(instant);
  }
}
