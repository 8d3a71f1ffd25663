package mainsgap.cli;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import mainsgap.bench.CatchWish;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads from an option's word how the event is to be caught. */
final class CatchWord implements ITypeConverter<CatchWish>, Iterable<String> {
  private static final Map<String, CatchWish> WORDS = words();

  private static Map<String, CatchWish> words() {
    Map<String, CatchWish> words = new LinkedHashMap<>();
    for (CatchWish wish : CatchWish.values()) {
      words.put(wish.word(), wish);
    }
    return words;
  }

  @Override
  public CatchWish convert(String word) {
    CatchWish wish = WORDS.get(word.toLowerCase(Locale.ROOT));
    if (wish == null) {
      throw new TypeConversionException(
          "'" + word + "' is none of " + String.join(", ", WORDS.keySet()));
    }
    return wish;
  }

  @Override
  public Iterator<String> iterator() {
    return WORDS.keySet().iterator();
  }
}
