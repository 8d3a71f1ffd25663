package mainsgap.desk;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javafx.application.Platform;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Starts the toolkit once for all tests of the desk, without a display; they are skipped by name
 * where type cannot be drawn.
 */
public final class DeskToolkit implements BeforeAllCallback {
  private static final long LIMIT_SECONDS = 60;
  private static boolean started;
  private static volatile String silence = "";

  @Override
  public void beforeAll(ExtensionContext context) throws InterruptedException {
    boolean linux = System.getProperty("os.name", "").startsWith("Linux");
    assumeTrue(!linux || isThere("libpango-1.0.so.0", "/usr/lib", "/lib"), "libpango is missing");
    assumeTrue(!linux || isThere(".ttf", "/usr/share/fonts"), "there is no font");
    start();
  }

  private static synchronized void start() throws InterruptedException {
    if (started) {
      return;
    }
    CountDownLatch ready = new CountDownLatch(1);
    Platform.startup(ready::countDown);
    if (!ready.await(LIMIT_SECONDS, TimeUnit.SECONDS)) {
      throw new IllegalStateException("the toolkit did not start");
    }
    Platform.setImplicitExit(false);
    started = true;
  }

  /**
   * Does {@code work} on the thread of the toolkit and gives what it gives. Once that thread did
   * not answer, nothing waits for it any more: every later test fails at once and says why.
   */
  public static <T> T onFx(Callable<T> work) {
    if (!silence.isEmpty()) {
      throw new AssertionError(silence);
    }
    FutureTask<T> task = new FutureTask<>(work);
    Platform.runLater(task);
    try {
      return task.get(LIMIT_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException e) {
      throw new AssertionError(e.getCause());
    } catch (InterruptedException e) {
      throw new AssertionError("interrupted while the toolkit's thread was at work", e);
    } catch (TimeoutException e) {
      silence = "the toolkit's thread did not answer for " + LIMIT_SECONDS + " s:" + stacks();
      throw new AssertionError(silence, e);
    }
  }

  /** Does {@code work} on the thread of the toolkit. */
  public static void doOnFx(Runnable work) {
    Object unused = onFx(() -> Boolean.valueOf(ran(work)));
  }

  /** Waits until {@code condition} holds, asked on the thread of the toolkit. */
  public static void await(String what, BooleanSupplier condition) {
    long from = System.nanoTime();
    while (System.nanoTime() - from < TimeUnit.SECONDS.toNanos(LIMIT_SECONDS)) {
      if (onFx(condition::getAsBoolean)) {
        return;
      }
      try {
        TimeUnit.MILLISECONDS.sleep(20);
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
    throw new AssertionError("waited in vain: " + what);
  }

  /** Where every thread is. */
  private static String stacks() {
    StringBuilder text = new StringBuilder();
    Thread.getAllStackTraces()
        .forEach(
            (thread, stack) -> {
              text.append("\n\n").append(thread.getName()).append(' ').append(thread.getState());
              Stream.of(stack).limit(40).forEach(frame -> text.append("\n  ").append(frame));
            });
    return text.toString();
  }

  private static boolean ran(Runnable work) {
    work.run();
    return true;
  }

  private static boolean isThere(String ending, String... folders) {
    return Stream.of(folders)
        .map(Path::of)
        .filter(Files::isDirectory)
        .anyMatch(f -> has(f, ending));
  }

  private static boolean has(Path folder, String ending) {
    try (Stream<Path> files =
        Files.find(folder, 5, (path, attributes) -> path.toString().endsWith(ending))) {
      return files.findAny().isPresent();
    } catch (IOException | java.io.UncheckedIOException e) {
      return false;
    }
  }
}
