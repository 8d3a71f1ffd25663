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

  /** Does {@code work} on the thread of the toolkit and gives what it gives. */
  public static <T> T onFx(Callable<T> work) {
    FutureTask<T> task = new FutureTask<>(work);
    Platform.runLater(task);
    try {
      return task.get(LIMIT_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException e) {
      throw new AssertionError(e.getCause());
    } catch (InterruptedException | TimeoutException e) {
      throw new AssertionError("the toolkit's thread did not answer", e);
    }
  }

  /** Does {@code work} on the thread of the toolkit. */
  public static void doOnFx(Runnable work) {
    Object unused = onFx(() -> Boolean.valueOf(ran(work)));
  }

  /** Waits until {@code condition} holds, asked on the thread of the toolkit. */
  public static void await(String what, BooleanSupplier condition) {
    for (int i = 0; i < LIMIT_SECONDS * 50; i++) {
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
