package mainsgap.desk.trace;

/**
 * A stretch of the time axis that all traces of a picture share.
 *
 * @param fromSeconds from the zero of the picture
 * @param toSeconds from the zero of the picture, above {@code fromSeconds}
 */
public record TimeSpan(double fromSeconds, double toSeconds) {

  /** Checks that the span has a length. */
  public TimeSpan {
    if (!Double.isFinite(fromSeconds) || !Double.isFinite(toSeconds) || fromSeconds >= toSeconds) {
      throw new IllegalArgumentException(
          "a span of time ends after it starts, found "
              + fromSeconds
              + " s to "
              + toSeconds
              + " s");
    }
  }

  /** From its start to its end. */
  public double lengthSeconds() {
    return toSeconds - fromSeconds;
  }

  /** Whether the instant lies in it, its ends included. */
  public boolean holds(double seconds) {
    return seconds >= fromSeconds && seconds <= toSeconds;
  }

  /** Both, and what lies between them. */
  public TimeSpan and(TimeSpan other) {
    return new TimeSpan(
        Math.min(fromSeconds, other.fromSeconds), Math.max(toSeconds, other.toSeconds));
  }

  /** The same length, later by so much. */
  public TimeSpan later(double seconds) {
    return new TimeSpan(fromSeconds + seconds, toSeconds + seconds);
  }

  /** {@code factor} times as long, with {@code seconds} staying at its place in the span. */
  public TimeSpan scaledAbout(double seconds, double factor) {
    return new TimeSpan(
        seconds - (seconds - fromSeconds) * factor, seconds + (toSeconds - seconds) * factor);
  }

  /** Moved, and cut or lengthened where it must be, so that it lies within {@code bounds}. */
  public TimeSpan within(TimeSpan bounds, double leastSeconds) {
    double least = Math.min(leastSeconds, bounds.lengthSeconds());
    double length = Math.max(least, Math.min(lengthSeconds(), bounds.lengthSeconds()));
    double middle = (fromSeconds + toSeconds) / 2;
    double from = length == lengthSeconds() ? fromSeconds : middle - length / 2;
    if (from <= bounds.fromSeconds) {
      return new TimeSpan(bounds.fromSeconds, bounds.fromSeconds + length);
    }
    return from + length >= bounds.toSeconds
        ? new TimeSpan(bounds.toSeconds - length, bounds.toSeconds)
        : new TimeSpan(from, from + length);
  }
}
