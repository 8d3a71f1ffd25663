package mainsgap.desk;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.stage.Screen;
import javafx.stage.Stage;
import mainsgap.bench.StateFolder;
import mainsgap.desk.manners.Appearance;
import mainsgap.desk.manners.Background;
import mainsgap.desk.manners.DeskMemory;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;
import mainsgap.desk.manners.Sounds;
import mainsgap.desk.manners.UiThread;
import mainsgap.waiting.Clock;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The application of the window. */
public final class Desk extends Application {
  // The first logger that is made opens the log, so its place is told before.
  static {
    System.setProperty("mainsgap.log.folder", stateFolder().toString());
  }

  private static final Logger LOG = LoggerFactory.getLogger(Desk.class);
  private static final double LEAST_WIDTH = 960;
  private static final double LEAST_HEIGHT = 600;
  private static final double USUAL_WIDTH = 1440;
  private static final double USUAL_HEIGHT = 900;

  private final DeskTools tools;
  private final List<Page> pages;
  private @Nullable DeskWindow window;

  /** For the toolkit: what is as it was left comes from the user's state folder. */
  public Desk() {
    UiThread ui = UiThread.ofToolkit();
    DeskMemory memory = DeskMemory.in(stateFolder());
    tools =
        new DeskTools(
            ui,
            Background.onItsOwnThreads(ui),
            memory,
            new Appearance(memory),
            Sounds.onThisComputer(memory, ui),
            Clock.system());
    pages = Pages.of(tools, this::bringToFront);
  }

  /**
   * Opens the window and returns when it is closed; where it cannot open, gives the reason in a few
   * words.
   */
  public static Optional<String> open() {
    if (System.getProperty("os.name", "").startsWith("Linux")
        && System.getenv().getOrDefault("DISPLAY", "").isBlank()) {
      return Optional.of("there is no display (DISPLAY is not set)");
    }
    try {
      launch(Desk.class);
      return Optional.empty();
    } catch (UnsupportedOperationException | LinkageError e) {
      LOG.error("the toolkit of the window did not start", e);
      return Optional.of("its toolkit did not start (" + e.getMessage() + ")");
    }
  }

  private static Path stateFolder() {
    return StateFolder.of(System.getenv(), System.getProperties());
  }

  @Override
  public void start(Stage stage) {
    DeskMemory memory = tools.memory();
    DeskWindow opened =
        new DeskWindow(
            tools,
            pages,
            memory.number("window.width").orElse(USUAL_WIDTH),
            memory.number("window.height").orElse(USUAL_HEIGHT));
    window = opened;
    stage.setTitle("Mainsgap");
    stage.setScene(opened.scene());
    stage.setMinWidth(LEAST_WIDTH);
    stage.setMinHeight(LEAST_HEIGHT);
    placeAsLeft(stage);
    stage.setOnCloseRequest(event -> close(stage));
    stage.show();
    logWhenUsable(stage.getScene());
    // Ctrl-C in the terminal, kill and log-off end the process past the window.
    Runtime.getRuntime()
        .addShutdownHook(new Thread(() -> pages.forEach(Page::makeSafe), "make-safe"));
  }

  private void bringToFront(int page) {
    if (window != null) {
      window.open(page);
    }
  }

  /** The first picture is drawn once the toolkit has asked for the next. */
  private static void logWhenUsable(Scene scene) {
    Runnable afterTheFirst =
        new Runnable() {
          private int pulses;

          @Override
          public void run() {
            pulses++;
            if (pulses < 2) {
              Platform.requestNextPulse();
              return;
            }
            scene.removePostLayoutPulseListener(this);
            LOG.info(
                "the window can be used {} ms after the program was started",
                ManagementFactory.getRuntimeMXBean().getUptime());
          }
        };
    scene.addPostLayoutPulseListener(afterTheFirst);
    Platform.requestNextPulse();
  }

  private void placeAsLeft(Stage stage) {
    DeskMemory memory = tools.memory();
    memory
        .number("window.x")
        .ifPresent(
            x ->
                memory
                    .number("window.y")
                    .ifPresent(
                        y -> {
                          if (isOnAScreen(x, y)) {
                            stage.setX(x);
                            stage.setY(y);
                          }
                        }));
    stage.setMaximized(memory.text("window.maximized").map(Boolean::parseBoolean).orElse(false));
  }

  /** A screen that was there last time may have been taken away. */
  private static boolean isOnAScreen(double x, double y) {
    return !Screen.getScreensForRectangle(new Rectangle2D(x, y, 100, 100)).isEmpty();
  }

  private static void closePage(Page page) {
    try {
      page.closing();
    } catch (RuntimeException e) {
      LOG.error("the page {} could not be closed in order", page.title(), e);
    }
  }

  private void close(Stage stage) {
    DeskMemory memory = tools.memory();
    memory.keep("window.maximized", Boolean.toString(stage.isMaximized()));
    if (!stage.isMaximized()) {
      memory.keep("window.x", stage.getX());
      memory.keep("window.y", stage.getY());
      memory.keep("window.width", stage.getScene().getWidth());
      memory.keep("window.height", stage.getScene().getHeight());
    }
    // The later pages first: a series is made safe whatever becomes of the rest.
    for (int i = pages.size() - 1; i >= 0; i--) {
      closePage(pages.get(i));
    }
    memory.save();
    tools.sounds().close();
    tools.background().close();
    Platform.exit();
  }
}
