package mainsgap.cli;

import java.util.List;

/** The cautions as a person reads them on a terminal. */
final class CautionsText {
  private CautionsText() {}

  static String bulleted(List<String> cautions) {
    StringBuilder text = new StringBuilder("Before you probe or switch mains:\n");
    cautions.forEach(line -> text.append(TextWrap.hanging("  - ", line)).append('\n'));
    return text.append('\n').toString();
  }
}
