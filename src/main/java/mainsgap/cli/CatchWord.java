package mainsgap.cli;

import java.util.Locale;
import mainsgap.bench.CatchWish;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads from an option's word how the event is to be caught. */
final class CatchWord implements ITypeConverter<CatchWish> {
  @Override
  public CatchWish convert(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "automatic" -> CatchWish.AUTOMATIC;
      case "time-out" -> CatchWish.TIME_OUT_TRIGGER;
      case "record" -> CatchWish.FORCED_RECORD;
      default ->
          throw new TypeConversionException(
              "'" + word + "' is none of automatic, time-out, record");
    };
  }
}
