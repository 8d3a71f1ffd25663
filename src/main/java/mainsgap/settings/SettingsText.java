package mainsgap.settings;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Writes a TOML file, table by table. A table of which nothing is said is left out. */
public final class SettingsText {
  private static final Pattern BARE_KEY = Pattern.compile("[A-Za-z0-9_-]+");

  private final StringBuilder text = new StringBuilder();
  private String header = "";

  /** A line for people. */
  public SettingsText remark(String line) {
    text.append("# ").append(line).append('\n');
    return this;
  }

  /** What follows stands in the table of this dotted name. */
  public SettingsText table(String dottedName) {
    header = "[" + dottedName + "]";
    return this;
  }

  /** A text; nothing where it is null or blank. */
  public SettingsText text(String key, @Nullable String value) {
    return value == null || value.isBlank() ? this : entry(key, quoted(value));
  }

  /** A number; nothing where it is null. */
  public SettingsText number(String key, @Nullable Double value) {
    return value == null
        ? this
        : entry(key, BigDecimal.valueOf(value).stripTrailingZeros().toPlainString());
  }

  /** A whole number; nothing where it is null. */
  public SettingsText whole(String key, @Nullable Integer value) {
    return value == null ? this : entry(key, Integer.toString(value));
  }

  /** A table that stands somewhere else already, with its header and its comments. */
  public SettingsText block(String block) {
    if (!block.isBlank()) {
      header = "";
      text.append(text.length() == 0 ? "" : "\n").append(block.strip()).append('\n');
    }
    return this;
  }

  /** The whole file. */
  @Override
  public String toString() {
    return text.toString();
  }

  private SettingsText entry(String key, String value) {
    if (!header.isEmpty()) {
      text.append(text.length() == 0 ? "" : "\n").append(header).append('\n');
      header = "";
    }
    text.append(BARE_KEY.matcher(key).matches() ? key : quoted(key))
        .append(" = ")
        .append(value)
        .append('\n');
    return this;
  }

  private static String quoted(String value) {
    StringBuilder quoted = new StringBuilder("\"");
    value
        .chars()
        .forEach(
            unit -> {
              if (unit == '"' || unit == '\\') {
                quoted.append('\\').append((char) unit);
              } else if (Character.isISOControl(unit)) {
                quoted.append(String.format("\\u%04X", unit));
              } else {
                quoted.append((char) unit);
              }
            });
    return quoted.append('"').toString();
  }
}
