package mainsgap.cli;

import java.util.Locale;

/** Breaks sentences into lines for a terminal. */
final class TextWrap {
  private static final int WIDTH = 96;

  private TextWrap() {}

  /** A line that begins with its label, and ends; the labels of several lines align. */
  static String labelled(String label, String text) {
    return hanging(String.format(Locale.ROOT, "%-12s ", label), text) + "\n";
  }

  /** The text after {@code lead}, its further lines indented to stand under the first. */
  static String hanging(String lead, String text) {
    return folded(lead, lead.length(), text);
  }

  /** The text, its further lines indented a little. */
  static String paragraph(String text) {
    return folded("", 4, text);
  }

  private static String folded(String lead, int indent, String text) {
    StringBuilder lines = new StringBuilder(lead);
    int column = lead.length();
    boolean lineIsEmpty = true;
    for (String word : text.split(" ", -1)) {
      if (!lineIsEmpty && column + 1 + word.length() > WIDTH) {
        lines.append('\n').append(" ".repeat(indent));
        column = indent;
        lineIsEmpty = true;
      }
      if (!lineIsEmpty) {
        lines.append(' ');
        column++;
      }
      lines.append(word);
      column += word.length();
      lineIsEmpty = false;
    }
    return lines.toString();
  }
}
