package mainsgap.desk.trials;

import java.time.Duration;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import mainsgap.bench.Series;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.SeriesListener;
import mainsgap.bench.SeriesRequest;
import mainsgap.session.Addition;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.StopRequest;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A series on a thread of its own. All may be called from the UI thread and return soon. */
final class RunningSeries {
  private static final Logger LOG = LoggerFactory.getLogger(RunningSeries.class);
  private static final Duration LOOK = Duration.ofMillis(20);

  private final Series series;
  private final StopRequest stop = new StopRequest();
  private volatile boolean over;

  RunningSeries(SeriesRequest request) {
    this.series = Series.of(request);
  }

  static void onAThreadOfItsOwn(Runnable work) {
    Thread thread = new Thread(work, "series");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * Runs it on {@code thread}. Whatever happens there, {@code ended} hears it, or {@code broken}
   * where the program itself failed.
   */
  void runOn(
      Executor thread,
      SeriesListener listener,
      Consumer<SeriesEnd> ended,
      Consumer<RuntimeException> broken) {
    thread.execute(
        () -> {
          try {
            SeriesEnd end = series.run(listener, stop);
            over = true;
            ended.accept(end);
          } catch (RuntimeException e) {
            over = true;
            LOG.error("the series broke off by a fault of the program", e);
            broken.accept(e);
          } catch (Error e) {
            over = true;
            LOG.error("the series broke off by a fault of the program", e);
            broken.accept(new IllegalStateException(e.toString(), e));
          }
        });
  }

  void stop() {
    stop.request();
  }

  void proceed() {
    series.proceed();
  }

  void letMainsClose() {
    series.letMainsClose();
  }

  boolean add(Addition addition) {
    return series.add(addition);
  }

  /** Stops it and waits until the instrument is safe and the session closed; false at the limit. */
  boolean stopWithin(Duration limit, Clock clock) {
    stop.request();
    Deadline deadline = Deadline.after(limit, clock);
    StopRequest never = new StopRequest();
    while (!over && !deadline.hasPassed()) {
      clock.pause(LOOK, never);
    }
    return over;
  }
}
