package mainsgap.settings;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlTable;

/** Finds one table of a file as it is written there, comments and all. */
final class TomlBlock {
  private static final Pattern HEADER =
      Pattern.compile("\\s*\\[\\[?\\s*([^\\]]+?)\\s*\\]\\]?\\s*(?:#.*)?");

  private TomlBlock() {}

  /**
   * The table {@code path} word for word, the comment lines right above it too. Where it is written
   * in a way that lines do not show (inline, or by dotted keys), its values written anew.
   *
   * @return empty where it is not there
   */
  static String of(String text, TomlTable content, List<String> path) {
    if (!(content.get(path) instanceof TomlTable table)) {
      return "";
    }
    String lines = lines(text.lines().toList(), path);
    return isSame(lines, path, table)
        ? lines
        : "[" + String.join(".", path) + "]\n" + table.toToml();
  }

  private static boolean isSame(String lines, List<String> path, TomlTable table) {
    TomlParseResult alone = Toml.parse(lines);
    return !alone.hasErrors()
        && alone.get(path) instanceof TomlTable found
        && found.toToml().equals(table.toToml());
  }

  private static String lines(List<String> lines, List<String> path) {
    StringBuilder block = new StringBuilder();
    StringBuilder comments = new StringBuilder();
    boolean inside = false;
    for (String line : lines) {
      List<String> key = headerOf(line);
      if (key == null && line.strip().startsWith("#")) {
        comments.append(line).append('\n');
        continue;
      }
      if (key != null) {
        inside = key.size() >= path.size() && key.subList(0, path.size()).equals(path);
      } else if (inside) {
        block.append(comments);
      }
      if (inside) {
        block.append(key == null ? "" : comments).append(line).append('\n');
      }
      comments.setLength(0);
    }
    return (inside ? block.append(comments) : block).toString().strip();
  }

  private static @Nullable List<String> headerOf(String line) {
    Matcher matcher = HEADER.matcher(line);
    if (!matcher.matches()) {
      return null;
    }
    try {
      return Toml.parseDottedKey(matcher.group(1));
    } catch (IllegalArgumentException e) {
      // A line of a list looks like a header too.
      return null;
    }
  }
}
