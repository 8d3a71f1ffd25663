package mainsgap.cli;

import mainsgap.bench.SimulatedUnits;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a simulated unit. */
final class UnitWord implements ITypeConverter<String> {
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
}
