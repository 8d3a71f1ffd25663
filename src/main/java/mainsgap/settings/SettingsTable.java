package mainsgap.settings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of a settings file. Its keys are declared when it is opened, so that a misspelt one is
 * named before another is missed. Every method that reads throws {@link SettingsException} with
 * file, line and key.
 */
public final class SettingsTable {
  /** No name, command or remark of a settings file is longer. */
  private static final int LONGEST_TEXT = 1000;

  private final SettingsPlace place;
  private final TomlTable content;
  private final List<String> allowed;

  SettingsTable(SettingsPlace place, TomlTable content, List<String> allowed) {
    this.place = place;
    this.content = content;
    this.allowed = allowed;
    content.keySet().stream()
        .filter(key -> !allowed.contains(key))
        .min(Comparator.comparingInt(key -> placeOf(key).line()))
        .ifPresent(this::refuse);
  }

  /** The keys that are there, as the file has them. */
  public List<String> keys() {
    return content.keySet().stream().sorted().toList();
  }

  /** Whether {@code key} is there. */
  public boolean has(String key) {
    return value(key) != null;
  }

  /** The table {@code key}, in which only {@code allowedKeys} may stand. */
  public SettingsTable table(String key, String... allowedKeys) {
    return new SettingsTable(
        placeOf(key), as(TomlTable.class, key, required(key)), List.of(allowedKeys));
  }

  /** The table {@code key}, where it is there. */
  public Optional<SettingsTable> optionalTable(String key, String... allowedKeys) {
    return has(key) ? Optional.of(table(key, allowedKeys)) : Optional.empty();
  }

  /** The table {@code key}, whose keys are the user's own words. */
  public SettingsTable openTable(String key) {
    TomlTable table = as(TomlTable.class, key, required(key));
    return new SettingsTable(placeOf(key), table, List.copyOf(table.keySet()));
  }

  /** The tables of the array {@code key}; none where it is not there. */
  public List<SettingsTable> tables(String key, String... allowedKeys) {
    List<SettingsTable> tables = new ArrayList<>();
    if (!has(key)) {
      return tables;
    }
    TomlArray array = as(TomlArray.class, key, required(key));
    for (int i = 0; i < array.size(); i++) {
      TomlTable table = as(TomlTable.class, key, array.get(i));
      int line = lineOf(array.inputPositionOf(i), placeOf(key).line());
      SettingsPlace here =
          new SettingsPlace(place.file(), line, place.dotted(key) + "[" + (i + 1) + "]");
      tables.add(new SettingsTable(here, table, List.of(allowedKeys)));
    }
    return tables;
  }

  /** A text that is not blank. */
  public String text(String key) {
    return notBlank(key, as(String.class, key, required(key)));
  }

  /** A text that is not blank, where it is there. */
  public Optional<String> optionalText(String key) {
    return has(key) ? Optional.of(text(key)) : Optional.empty();
  }

  /** A list of texts, none of them blank; empty where it is not there. */
  public List<String> texts(String key) {
    List<String> texts = new ArrayList<>();
    if (!has(key)) {
      return texts;
    }
    TomlArray array = as(TomlArray.class, key, required(key));
    for (int i = 0; i < array.size(); i++) {
      texts.add(notBlank(key, as(String.class, key, array.get(i))));
    }
    return texts;
  }

  /** A number, whole or not, in {@code least} to {@code most}. */
  public double number(String key, double least, double most) {
    return number(key, required(key), least, most);
  }

  private double number(String key, Object value, double least, double most) {
    double number =
        value instanceof Long whole ? whole.doubleValue() : as(Double.class, key, value);
    if (!(number >= least && number <= most)) {
      throw outOfRange(key, plain(number), plain(least), plain(most));
    }
    return number;
  }

  /** A number in {@code least} to {@code most}, where it is there. */
  public OptionalDouble optionalNumber(String key, double least, double most) {
    return has(key) ? OptionalDouble.of(number(key, least, most)) : OptionalDouble.empty();
  }

  /** A whole number in {@code least} to {@code most}. */
  public int whole(String key, int least, int most) {
    long number = as(Long.class, key, required(key));
    if (number < least || number > most) {
      throw outOfRange(key, Long.toString(number), "" + least, "" + most);
    }
    return (int) number;
  }

  /** A whole number, or {@code otherwise} where it is not there. */
  public int whole(String key, int least, int most, int otherwise) {
    return has(key) ? whole(key, least, most) : otherwise;
  }

  /** A list of whole numbers in {@code least} to {@code most}; empty where it is not there. */
  public List<Integer> wholes(String key, int least, int most) {
    List<Integer> wholes = new ArrayList<>();
    for (Object element : elements(key)) {
      long number = as(Long.class, key, element);
      if (number < least || number > most) {
        throw outOfRange(key, Long.toString(number), "" + least, "" + most);
      }
      wholes.add((int) number);
    }
    return wholes;
  }

  /** A list of numbers in {@code least} to {@code most}; empty where it is not there. */
  public List<Double> numbers(String key, double least, double most) {
    return elements(key).stream().map(element -> number(key, element, least, most)).toList();
  }

  /** True or false, or {@code otherwise} where it is not there. */
  public boolean flag(String key, boolean otherwise) {
    return has(key) ? as(Boolean.class, key, required(key)) : otherwise;
  }

  /** One of the constants of {@code type}, written small with hyphens for underscores. */
  public <E extends Enum<E>> E choice(String key, Class<E> type) {
    String word = text(key);
    List<String> words = new ArrayList<>();
    for (E constant : type.getEnumConstants()) {
      String spelt = constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
      if (spelt.equals(word)) {
        return constant;
      }
      words.add(spelt);
    }
    throw complaint(key, "is '" + word + "'; allowed: " + String.join(", ", words));
  }

  /** The name of {@code key} with those of the tables around it, such as 'commands.arm'. */
  public String dotted(String key) {
    return place.dotted(key);
  }

  /** A complaint about the value of {@code key}; the sentence goes on after the key. */
  public SettingsException complaint(String key, String sentence) {
    return placeOf(key).complaint(sentence);
  }

  private void refuse(String unknownKey) {
    throw complaint(
        unknownKey, "is not a key that is known here; allowed: " + String.join(", ", allowed));
  }

  private SettingsPlace placeOf(String key) {
    return new SettingsPlace(
        place.file(),
        lineOf(content.inputPositionOf(List.of(key)), place.line()),
        place.dotted(key));
  }

  private static int lineOf(@Nullable TomlPosition position, int otherwise) {
    return position == null ? otherwise : position.line();
  }

  private List<Object> elements(String key) {
    return has(key) ? as(TomlArray.class, key, required(key)).toList() : List.of();
  }

  private Object required(String key) {
    Object value = value(key);
    if (value == null) {
      throw complaint(key, "is missing: add it to this table");
    }
    return value;
  }

  private @Nullable Object value(String key) {
    if (!allowed.contains(key)) {
      throw new IllegalArgumentException("the key " + key + " was not declared");
    }
    return content.get(List.of(key));
  }

  private String notBlank(String key, String text) {
    if (text.isBlank()) {
      throw complaint(key, "is empty: write its text");
    }
    if (text.length() > LONGEST_TEXT) {
      throw complaint(
          key, "has " + text.length() + " characters; allowed: at most " + LONGEST_TEXT);
    }
    if (text.chars().anyMatch(Character::isISOControl)) {
      throw complaint(key, "holds a line end or another control character: write one plain line");
    }
    return text;
  }

  private <T> T as(Class<T> type, String key, Object value) {
    if (type.isInstance(value)) {
      return type.cast(value);
    }
    throw complaint(key, "is " + TomlWords.of(value) + ", expected " + TomlWords.of(type));
  }

  private SettingsException outOfRange(String key, String found, String least, String most) {
    return complaint(key, "is " + found + "; allowed: " + least + " to " + most);
  }

  private static String plain(double number) {
    return number == Math.rint(number) && Math.abs(number) < 1e15
        ? Long.toString((long) number)
        : Double.toString(number);
  }
}
