package mainsgap.desk.rig;

import java.util.List;
import mainsgap.bench.SeriesRequest;

/** The mains. */
final class WallFields {
  private static final double LARGEST_VOLTS = 1000;
  private static final double LOWEST_HERTZ = 40;
  private static final double HIGHEST_HERTZ = 70;

  final Field<Double> nominalVolts =
      new Field<>("wall.nominal", "the nominal voltage", Readings.number(1, LARGEST_VOLTS, "V"));
  final Field<Double> frequencyHertz =
      new Field<>(
          "wall.frequency",
          "the nominal frequency",
          Readings.number(LOWEST_HERTZ, HIGHEST_HERTZ, "Hz"));
  final Field<Double> lineToEarthVolts =
      new Field<>(
          "wall.line-to-earth", "the line to earth", Readings.number(1, LARGEST_VOLTS, "V"));

  List<Field<?>> all() {
    return List.of(nominalVolts, frequencyHertz, lineToEarthVolts);
  }

  double nominal() {
    return nominalVolts.valueOr(SeriesRequest.DEFAULT_VOLTS);
  }

  double frequency() {
    return frequencyHertz.valueOr(SeriesRequest.DEFAULT_HERTZ);
  }

  /** What a probe must stand. */
  double toEarth() {
    return lineToEarthVolts.valueOr(nominal());
  }
}
