package mainsgap.report.page;

import java.util.List;

/**
 * Facts under one caption.
 *
 * @param caption what they are about
 * @param facts in their order
 */
record FactTable(String caption, List<Fact> facts) {

  /** Takes its own copy. */
  FactTable {
    facts = List.copyOf(facts);
  }
}
