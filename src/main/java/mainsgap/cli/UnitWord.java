package mainsgap.cli;

import java.util.Iterator;
import mainsgap.bench.SimulatedUnits;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a simulated unit, and lists those that there are for the help. */
final class UnitWord implements ITypeConverter<String>, Iterable<String> {
  @Override
  public String convert(String word) {
    if (!SimulatedUnits.names().contains(word)) {
      throw new TypeConversionException(
          "there is no simulated unit '"
              + word
              + "': choose "
              + String.join(", ", SimulatedUnits.names()));
    }
    return word;
  }

  @Override
  public Iterator<String> iterator() {
    return SimulatedUnits.names().iterator();
  }
}
