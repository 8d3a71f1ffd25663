package mainsgap.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One thing that is known, or said not to be.
 *
 * @param label what it is
 * @param value as it is told
 */
record Fact(String label, String value) {
  /** Stands where the session has nothing: a report invents nothing. */
  static final String NOT_RECORDED = "not recorded";

  /** The fact, or that it was not recorded. */
  static Fact of(String label, @Nullable String value) {
    return new Fact(label, value == null || value.isBlank() ? NOT_RECORDED : value.strip());
  }

  /** The words of a session under their own labels. */
  static List<Fact> of(Map<String, String> words) {
    List<Fact> facts = new ArrayList<>();
    words.forEach((label, value) -> facts.add(of(label, value)));
    return facts;
  }
}
