package mainsgap.bench;

import java.util.List;
import mainsgap.arming.Proceed;
import mainsgap.waiting.StopRequest;

/**
 * One series of trials, from the request to its end. Run it once; the thread that runs it owns the
 * instrument and the session file.
 */
public final class Series {
  private final SeriesRequest request;
  private final Proceed proceed = new Proceed();

  private Series(SeriesRequest request) {
    this.request = request;
  }

  /** The series that {@code request} asks for; nothing is opened yet. */
  public static Series of(SeriesRequest request) {
    return new Series(request);
  }

  /** Goes on sooner than the settling time ends. Any thread may call it. */
  public void proceed() {
    proceed.give();
  }

  /** Runs the series to its end; every expected end is a value. */
  public SeriesEnd run(SeriesListener listener, StopRequest stop) {
    return new SeriesEnd(
        SeriesEnd.Kind.WRONG_USE,
        "the bench is not built yet: " + request + listener + stop.isRequested(),
        "",
        List.of(),
        RunningFigures.NONE,
        null,
        null);
  }
}
