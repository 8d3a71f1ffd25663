package mainsgap.cli;

import java.util.Locale;
import mainsgap.signal.Event;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the event from an option's word. */
final class EventWord implements ITypeConverter<Event> {
  @Override
  public Event convert(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "loss" -> Event.LOSS;
      case "restoration" -> Event.RESTORATION;
      default ->
          throw new TypeConversionException("'" + word + "' is neither loss nor restoration");
    };
  }
}
