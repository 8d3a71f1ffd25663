package mainsgap.cli;

/** Breaks sentences into lines for a terminal. */
final class TextWrap {
  private static final int WIDTH = 96;

  private TextWrap() {}

  /** The text after {@code lead}, its further lines indented to stand under the first. */
  static String hanging(String lead, String text) {
    StringBuilder lines = new StringBuilder(lead);
    int column = lead.length();
    boolean lineIsEmpty = true;
    for (String word : text.split(" ", -1)) {
      if (!lineIsEmpty && column + 1 + word.length() > WIDTH) {
        lines.append('\n').append(" ".repeat(lead.length()));
        column = lead.length();
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
