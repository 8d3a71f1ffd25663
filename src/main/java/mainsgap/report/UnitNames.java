package mainsgap.report;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import mainsgap.session.SessionHeader;
import org.jspecify.annotations.Nullable;

/**
 * Names for the units of several sessions. Firmware and load belong to a name where they differ
 * among the sessions; other conditions, and at last the start, where the names would be the same.
 */
final class UnitNames {
  private static final List<String> ALWAYS_WHERE_THEY_DIFFER = List.of("firmware", "load");
  private static final DateTimeFormatter START =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private UnitNames() {}

  static List<String> of(List<SessionHeader> headers) {
    List<String> names = new ArrayList<>(headers.stream().map(UnitNames::unit).toList());
    for (String key : ALWAYS_WHERE_THEY_DIFFER) {
      if (differ(headers, key)) {
        addTo(names, headers, key);
      }
    }
    for (String key : otherKeys(headers)) {
      tellApart(names, headers, key);
    }
    addStarts(names, headers);
    return List.copyOf(names);
  }

  private static String unit(SessionHeader header) {
    return Wording.isolated(header.unit().isBlank() ? "unnamed unit" : header.unit().strip());
  }

  private static Collection<String> otherKeys(List<SessionHeader> headers) {
    Set<String> keys = new LinkedHashSet<>(List.of("serial"));
    Set<String> sorted = new TreeSet<>();
    headers.forEach(header -> sorted.addAll(header.conditions().keySet()));
    keys.addAll(sorted);
    keys.removeAll(ALWAYS_WHERE_THEY_DIFFER);
    return keys;
  }

  /** Adds the condition to those names that are the same although it differs. */
  private static void tellApart(List<String> names, List<SessionHeader> headers, String key) {
    List<String> before = List.copyOf(names);
    for (int i = 0; i < before.size(); i++) {
      List<SessionHeader> alike = new ArrayList<>();
      for (int k = 0; k < before.size(); k++) {
        if (before.get(k).equals(before.get(i))) {
          alike.add(headers.get(k));
        }
      }
      String value = value(headers.get(i), key);
      if (differ(alike, key) && value != null) {
        names.set(i, with(names.get(i), key, value));
      }
    }
  }

  private static void addTo(List<String> names, List<SessionHeader> headers, String key) {
    for (int i = 0; i < names.size(); i++) {
      String value = value(headers.get(i), key);
      names.set(i, with(names.get(i), key, value == null ? "not told" : value));
    }
  }

  private static void addStarts(List<String> names, List<SessionHeader> headers) {
    List<String> before = List.copyOf(names);
    for (int i = 0; i < names.size(); i++) {
      if (Collections.frequency(before, before.get(i)) > 1) {
        names.set(i, before.get(i) + ", " + START.format(headers.get(i).startedAt()));
      }
    }
  }

  private static boolean differ(List<SessionHeader> headers, String key) {
    return headers.stream().map(header -> String.valueOf(value(header, key))).distinct().count()
        > 1;
  }

  private static @Nullable String value(SessionHeader header, String key) {
    String value = header.conditions().get(key);
    return value == null || value.isBlank() ? null : value.strip();
  }

  private static String with(String name, String key, String value) {
    return name + ", " + key + " " + Wording.isolated(value);
  }
}
