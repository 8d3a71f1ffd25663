package mainsgap.settings;

import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** The words that complaints use for what stands in a TOML file. */
final class TomlWords {
  private TomlWords() {}

  static String of(Object value) {
    if (value instanceof String text) {
      return "the text \"" + shortened(text) + "\"";
    }
    if (value instanceof Long || value instanceof Double) {
      return "the number " + value;
    }
    if (value instanceof Boolean) {
      return "the flag " + value;
    }
    if (value instanceof TomlArray) {
      return "a list";
    }
    return value instanceof TomlTable ? "a table" : "a date or time";
  }

  static String of(Class<?> type) {
    if (type == String.class) {
      return "a text in quotes";
    }
    if (type == Long.class) {
      return "a whole number";
    }
    if (type == Double.class) {
      return "a number";
    }
    if (type == Boolean.class) {
      return "true or false";
    }
    return type == TomlArray.class ? "a list" : "a table";
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "…";
  }
}
