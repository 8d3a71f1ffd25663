package mainsgap.simulation;

import java.util.OptionalDouble;

/** What makes the scope take its record by itself. */
sealed interface Trigger {
  /** The channel that is watched, from 1. */
  int channel();

  /**
   * When it first fires, for a watch from {@code fromSeconds} to {@code toSeconds}.
   *
   * @param signal what the channel sees, noise and all
   */
  OptionalDouble firesAt(Voltage signal, double fromSeconds, double toSeconds, double stepSeconds);

  /** Fires once no crossing of the level, either way, has come for a time. */
  record TimeOut(int channel, double levelVolts, double widthSeconds) implements Trigger {
    @Override
    public OptionalDouble firesAt(
        Voltage signal, double fromSeconds, double toSeconds, double stepSeconds) {
      double crossedSeconds = fromSeconds;
      boolean above = signal.voltsAt(fromSeconds) > levelVolts;
      for (long i = 1; fromSeconds + i * stepSeconds <= toSeconds; i++) {
        double at = fromSeconds + i * stepSeconds;
        boolean nowAbove = signal.voltsAt(at) > levelVolts;
        if (nowAbove != above) {
          above = nowAbove;
          crossedSeconds = at;
        } else if (at - crossedSeconds >= widthSeconds) {
          return OptionalDouble.of(at);
        }
      }
      return OptionalDouble.empty();
    }
  }

  /** Fires where the signal rises through the level. */
  record Edge(int channel, double levelVolts) implements Trigger {
    @Override
    public OptionalDouble firesAt(
        Voltage signal, double fromSeconds, double toSeconds, double stepSeconds) {
      boolean above = signal.voltsAt(fromSeconds) > levelVolts;
      for (long i = 1; fromSeconds + i * stepSeconds <= toSeconds; i++) {
        double at = fromSeconds + i * stepSeconds;
        boolean nowAbove = signal.voltsAt(at) > levelVolts;
        if (nowAbove && !above) {
          return OptionalDouble.of(at);
        }
        above = nowAbove;
      }
      return OptionalDouble.empty();
    }
  }
}
