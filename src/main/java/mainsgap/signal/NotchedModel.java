package mainsgap.signal;

/**
 * A supply with notches: a sum of harmonics that they do not bend, and what each cycle has beside
 * it. Notches are cut by the load, into whatever feeds it: its cycle has no rests and steps of its
 * own. Immutable.
 *
 * @param harmonics as they would be without the notches, with the noise away from them
 * @param beside the mean cycle of the deviations from them: what noise leaves, but in the notches
 */
public record NotchedModel(HarmonicModel harmonics, FoldedModel beside) implements PeriodicModel {
  @Override
  public double voltsAt(double seconds) {
    return harmonics.voltsAt(seconds) + beside.voltsAt(seconds);
  }

  @Override
  public Row every(double intervalSeconds) {
    Row row = harmonics.every(intervalSeconds);
    return (volts, count, firstSeconds) -> {
      row.fill(volts, count, firstSeconds);
      for (int i = 0; i < count; i++) {
        volts[i] += beside.voltsAt(firstSeconds + i * intervalSeconds);
      }
    };
  }

  @Override
  public double frequencyHertz() {
    return harmonics.frequencyHertz();
  }

  @Override
  public double amplitudeVolts() {
    return harmonics.amplitudeVolts();
  }

  @Override
  public double angleDegreesAt(double seconds) {
    return harmonics.angleDegreesAt(seconds);
  }

  @Override
  public double spreadVoltsAt(double seconds) {
    return beside.spreadVoltsAt(seconds);
  }

  @Override
  public double usualSpreadVolts() {
    return beside.usualSpreadVolts();
  }

  @Override
  public boolean isVagueInPlaces() {
    return true;
  }
}
