package mainsgap.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import mainsgap.bench.DiscoveryEnd;
import mainsgap.bench.FoundInstrument;
import org.jspecify.annotations.Nullable;

/** What was found, for scripts: names are kept. */
final class DiscoveryJson {
  private DiscoveryJson() {}

  static String of(DiscoveryEnd end) {
    Map<String, @Nullable Object> document = new LinkedHashMap<>();
    document.put("instruments", end.instruments().stream().map(DiscoveryJson::instrument).toList());
    document.put("notes", end.notes());
    return Json.document(document);
  }

  private static Map<String, @Nullable Object> instrument(FoundInstrument one) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("name", one.name());
    values.put("manufacturer", orNull(one.manufacturer()));
    values.put("model", orNull(one.model()));
    values.put("serial", orNull(one.serial()));
    values.put("firmware", orNull(one.firmware()));
    values.put("identity", one.known().name().toLowerCase(Locale.ROOT));
    List<Map<String, String>> links = new ArrayList<>();
    for (FoundInstrument.Link link : one.links()) {
      Map<String, String> row = new LinkedHashMap<>();
      row.put("resource", link.resource());
      row.put("from", link.source().word());
      links.add(row);
    }
    values.put("links", links);
    values.put("profile", orNull(one.profile()));
    values.put("remark", orNull(one.remark()));
    return values;
  }

  private static @Nullable String orNull(String text) {
    return text.isEmpty() ? null : text;
  }
}
