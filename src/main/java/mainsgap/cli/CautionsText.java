package mainsgap.cli;

import mainsgap.bench.Cautions;

/** The cautions as a person reads them on a terminal. */
final class CautionsText {
  private CautionsText() {}

  static String bulleted() {
    StringBuilder text = new StringBuilder("Before you probe or switch mains:\n");
    Cautions.list().forEach(line -> text.append(TextWrap.hanging("  - ", line)).append('\n'));
    return text.append('\n').toString();
  }
}
