package mainsgap.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The TOML examples of the pages in {@code src/docs}, as a reader would copy them. */
final class Pages {
  private static final String BEGIN = "```toml\n";

  private Pages() {}

  static List<String> examplesOf(String page) {
    try {
      String text = Files.readString(Path.of("src", "docs", page));
      List<String> examples = new ArrayList<>();
      for (int at = text.indexOf(BEGIN); at >= 0; at = text.indexOf(BEGIN, at)) {
        at += BEGIN.length();
        examples.add(text.substring(at, text.indexOf("```", at)));
      }
      return examples;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
