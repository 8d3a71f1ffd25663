package mainsgap.desk.pictures;

import atlantafx.base.theme.PrimerLight;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import javafx.animation.AnimationTimer;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.trace.TimeSpan;
import mainsgap.desk.trace.TraceScene;
import mainsgap.desk.trace.TraceView;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.FittedSupplies;
import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.Outcome;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The work of a frame while a measured capture of 10 million samples is panned in a window of
 * 1920x1080, in the software pipeline without a display.
 *
 * <p>A frame's own work is what the UI thread does for it: the new view, style, layout with the
 * painting of all pixels, and the hand-over to the thread that renders. The distance from frame to
 * frame has the rendering in it, and is never shorter than the toolkit's 16.7 ms.
 */
public final class FrameBench {
  private static final Logger LOG = LoggerFactory.getLogger(FrameBench.class);
  private static final int SAMPLES = 10_000_000;
  private static final double RATE_HERTZ = 1e6;
  private static final int WARM_UP_FRAMES = 120;
  private static final int FRAMES = 300;
  private static final double PIXELS_A_FRAME = 12;
  private static final MeasuringTask TASK = new MeasuringTask(Event.LOSS, 230, 50);

  /** In seconds. */
  private static final double[] VIEWS = {5, 1, 0.2, 0.05};

  private FrameBench() {}

  /** Measures, and writes the table to the file named first, else to target/frame-speed.txt. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Map.of(
            "glass.platform", "Monocle",
            "monocle.platform", "Headless",
            "headless.geometry", "1920x1080-32",
            "prism.order", "sw",
            "prism.text", "t2k")
        .forEach((name, value) -> System.getProperties().putIfAbsent(name, value));
    CountDownLatch started = new CountDownLatch(1);
    Platform.startup(started::countDown);
    started.await();
    Platform.setImplicitExit(false);
    write(Path.of(arguments.length > 0 ? arguments[0] : "target/frame-speed.txt"));
    Platform.exit();
  }

  /** Measures on the toolkit that runs, and writes the table. */
  static List<Frames> write(Path file) throws IOException {
    List<Frames> all = new ArrayList<>();
    for (boolean everyChannel : new boolean[] {false, true}) {
      TraceScene scene = scene(everyChannel);
      TracePane pane = DeskToolkit.onFx(TracePane::new);
      Stage stage = DeskToolkit.onFx(() -> opened(pane, scene));
      for (double seconds : VIEWS) {
        String name = String.format(Locale.ROOT, "%d, %s s", scene.traces().size(), seconds);
        all.add(panned(name, pane.view(), stage.getScene(), seconds));
      }
      DeskToolkit.doOnFx(stage::close);
    }
    StringBuilder table = new StringBuilder(Frames.heading());
    all.forEach(frames -> table.append(frames.row()));
    Files.writeString(file, table, StandardCharsets.UTF_8);
    LOG.warn("\n{}", table);
    return all;
  }

  private static Stage opened(TracePane pane, TraceScene shown) {
    Application.setUserAgentStylesheet(new PrimerLight().getUserAgentStylesheet());
    Scene scene = new Scene(pane.node(), 1920, 1080);
    scene
        .getStylesheets()
        .add(
            Objects.requireNonNull(DeskToolkit.class.getResource("/mainsgap/desk/desk.css"))
                .toExternalForm());
    pane.show(shown);
    Stage stage = new Stage();
    stage.setScene(scene);
    stage.show();
    return stage;
  }

  /** Pans to and fro about the gap. */
  private static Frames panned(String name, TraceView view, Scene scene, double seconds) {
    Frames frames = new Frames(name, FRAMES);
    Panning panning =
        DeskToolkit.onFx(
            () -> {
              view.setView(new TimeSpan(-seconds / 2, seconds / 2));
              return new Panning(view, scene, frames);
            });
    DeskToolkit.doOnFx(panning::start);
    DeskToolkit.await("all frames of " + name, () -> frames.isFull());
    DeskToolkit.doOnFx(panning::stop);
    return frames;
  }

  /** Moves the view at the start of each pulse, and looks at the clock when the pulse is over. */
  private static final class Panning extends AnimationTimer {
    private final TraceView view;
    private final Frames frames;
    private int count;
    private long layoutStart;
    private long layoutEnd;
    private long before;

    Panning(TraceView view, Scene scene, Frames frames) {
      this.view = view;
      this.frames = frames;
      scene.addPreLayoutPulseListener(() -> layoutStart = System.nanoTime());
      scene.addPostLayoutPulseListener(() -> layoutEnd = System.nanoTime());
    }

    @Override
    public void handle(long now) {
      long start = System.nanoTime();
      long cpuStart = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      long interval = start - before;
      before = start;
      double way = (count / 150 % 2 == 0 ? 1 : -1) * PIXELS_A_FRAME / view.getWidth();
      view.setView(view.getView().later(way * view.getView().lengthSeconds()));
      count++;
      if (count > WARM_UP_FRAMES) {
        Platform.runLater(
            () ->
                frames.add(
                    System.nanoTime() - start,
                    layoutEnd - layoutStart,
                    ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpuStart,
                    interval));
      }
    }
  }

  /** A capture as it is measured and shown, on one channel or four. */
  private static TraceScene scene(boolean everyChannel) {
    Map<ChannelRole, Waveform> waveforms = new LinkedHashMap<>();
    waveforms.put(ChannelRole.OUTPUT, waveform(1, 1));
    if (everyChannel) {
      waveforms.put(ChannelRole.MAINS, waveform(1, 2));
      waveforms.put(ChannelRole.SECOND_LEG, waveform(-1, 3));
      waveforms.put(ChannelRole.LOAD_CURRENT, waveform(0.01, 4));
    }
    Capture capture = new Capture(time(), waveforms);
    Outcome outcome = TransferMeasurement.measure(capture, TASK);
    if (outcome.kind() != Outcome.Kind.MEASURED) {
      throw new IllegalStateException("of no use here: " + outcome.sentence());
    }
    FittedSupplies supplies = FittedSupplies.of(capture, TASK);
    return TracePane.sceneOf(capture, outcome, supplies, InventedTrials.TEN);
  }

  private static TimeAxis time() {
    return new TimeAxis(-0.5 * SAMPLES / RATE_HERTZ, 1 / RATE_HERTZ, SAMPLES, 20);
  }

  private static Waveform waveform(double share, long seed) {
    Random random = new Random(seed);
    TimeAxis time = time();
    double step = 400.0 / 32768;
    byte[] block = new byte[2 * SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double volts = share * InventedCaptures.output(time.secondsAt(i)) + random.nextGaussian();
      int code = (int) Math.round(volts / step);
      block[2 * i] = (byte) code;
      block[2 * i + 1] = (byte) (code >> 8);
    }
    return new Waveform(
        block, CodeFormat.SIGNED_16_LSB_FIRST, new Scale(0, step, 0, -32767, 32767));
  }
}
