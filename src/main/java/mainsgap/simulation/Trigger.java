package mainsgap.simulation;

import java.util.OptionalDouble;

/** What makes the scope take its record by itself. */
sealed interface Trigger {
  /** The channel that is watched, from 1; {@link ScopeRecord#EXTERNAL} for the external input. */
  int channel();

  /** How long the trigger looks back: what came earlier is of no meaning to it. */
  double memorySeconds();

  /** A watch that begins at {@code seconds} on a signal that is at {@code volts}. */
  Watch from(double seconds, double volts);

  /**
   * When it first fires, for a watch from {@code fromSeconds} to {@code toSeconds}.
   *
   * @param signal what the channel sees, noise and all
   */
  default OptionalDouble firesAt(
      Voltage signal, double fromSeconds, double toSeconds, double stepSeconds) {
    Watch watch = from(fromSeconds, signal.voltsAt(fromSeconds));
    for (long i = 1; fromSeconds + i * stepSeconds <= toSeconds; i++) {
      double at = fromSeconds + i * stepSeconds;
      if (watch.firesAt(at, signal.voltsAt(at))) {
        return OptionalDouble.of(at);
      }
    }
    return OptionalDouble.empty();
  }

  /** A trigger at work: sees the signal in the order of time. */
  interface Watch {
    boolean firesAt(double seconds, double volts);
  }

  /** When a trigger that measures a time comes. */
  enum Fires {
    /** As soon as the time is over. */
    ON_TIME,
    /** When what was measured ends, if it was longer than the time. */
    AT_END
  }

  /** Fires once no crossing of the level, either way, has come for a time. */
  record TimeOut(int channel, double levelVolts, double widthSeconds) implements Trigger {
    @Override
    public double memorySeconds() {
      return widthSeconds;
    }

    @Override
    public Watch from(double seconds, double volts) {
      return new Watch() {
        private boolean above = volts > levelVolts;
        private double crossedSeconds = seconds;

        @Override
        public boolean firesAt(double now, double voltsNow) {
          boolean nowAbove = voltsNow > levelVolts;
          if (nowAbove != above) {
            above = nowAbove;
            crossedSeconds = now;
            return false;
          }
          return now - crossedSeconds >= widthSeconds;
        }
      };
    }
  }

  /** Measures the time since the last rise through the level: a dropout, an interval. */
  record Interval(int channel, double levelVolts, double widthSeconds, Fires fires)
      implements Trigger {
    @Override
    public double memorySeconds() {
      return widthSeconds;
    }

    @Override
    public Watch from(double seconds, double volts) {
      return new Watch() {
        private boolean above = volts > levelVolts;
        private double roseSeconds = fires == Fires.ON_TIME ? seconds : Double.NaN;

        @Override
        public boolean firesAt(double now, double voltsNow) {
          boolean rises = !above && voltsNow > levelVolts;
          above = voltsNow > levelVolts;
          boolean isLong = now - roseSeconds >= widthSeconds;
          if (rises) {
            roseSeconds = now;
          }
          return isLong && rises == (fires == Fires.AT_END);
        }
      };
    }
  }

  /** Measures how long the signal stays below the level. */
  record PulseWidth(int channel, double levelVolts, double widthSeconds, Fires fires)
      implements Trigger {
    @Override
    public double memorySeconds() {
      return widthSeconds;
    }

    @Override
    public Watch from(double seconds, double volts) {
      return new Stay(volts < levelVolts, seconds, widthSeconds, fires) {
        @Override
        boolean isInside(double now) {
          return now < levelVolts;
        }
      };
    }
  }

  /** Measures how long the signal stays between two levels. */
  record Window(int channel, double lowerVolts, double upperVolts, double widthSeconds, Fires fires)
      implements Trigger {
    @Override
    public double memorySeconds() {
      return widthSeconds;
    }

    @Override
    public Watch from(double seconds, double volts) {
      return new Stay(volts > lowerVolts && volts < upperVolts, seconds, widthSeconds, fires) {
        @Override
        boolean isInside(double now) {
          return now > lowerVolts && now < upperVolts;
        }
      };
    }
  }

  /**
   * How long a signal has been inside of something; a stay whose beginning is unseen has no end.
   */
  abstract class Stay implements Watch {
    private final double longestSeconds;
    private final Fires fires;
    private boolean inside;
    private double enteredSeconds;

    Stay(boolean inside, double seconds, double longestSeconds, Fires fires) {
      this.inside = inside;
      this.longestSeconds = longestSeconds;
      this.fires = fires;
      this.enteredSeconds = fires == Fires.ON_TIME ? seconds : Double.NaN;
    }

    abstract boolean isInside(double volts);

    @Override
    public boolean firesAt(double now, double volts) {
      boolean before = inside;
      inside = isInside(volts);
      if (inside && !before) {
        enteredSeconds = now;
      }
      boolean isLong = before && now - enteredSeconds >= longestSeconds;
      return isLong && inside == (fires == Fires.ON_TIME);
    }
  }

  /** Fires where the signal goes through the level. */
  record Edge(int channel, double levelVolts, boolean rising) implements Trigger {
    @Override
    public double memorySeconds() {
      return 0;
    }

    @Override
    public Watch from(double seconds, double volts) {
      return new Watch() {
        private boolean above = volts > levelVolts;

        @Override
        public boolean firesAt(double now, double voltsNow) {
          boolean nowAbove = voltsNow > levelVolts;
          boolean crosses = nowAbove != above && nowAbove == rising;
          above = nowAbove;
          return crosses;
        }
      };
    }
  }
}
