package mainsgap.desk.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import mainsgap.bench.RigCheckEnd.Seen;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/** The screen of the drawn scope: a few cycles of the real signals, each over its own range. */
final class ScopeScreen extends Region {
  private static final int MOST_POINTS = 400;
  private static final double FILLED_PART = 0.85;

  /** Values from −1 to 1, evenly over the screen. */
  private record Wave(Polyline line, List<Double> parts) {}

  private final Line zero = new Line();
  private final Rectangle clip = new Rectangle();
  private final List<Wave> waves = new ArrayList<>();

  ScopeScreen() {
    getStyleClass().add("rig-screen");
    zero.getStyleClass().add("rig-screen-zero");
    setClip(clip);
    getChildren().add(zero);
  }

  /** What was seen; nothing where null. */
  void show(@Nullable Seen seen) {
    waves.clear();
    getChildren().setAll(zero);
    if (seen != null) {
      seen.look().waveforms().forEach((role, waveform) -> add(role, waveform));
    }
    requestLayout();
  }

  private void add(ChannelRole role, Waveform waveform) {
    Polyline line = new Polyline();
    line.getStyleClass()
        .addAll("rig-wave", "wave-" + role.words().toLowerCase(Locale.ROOT).replace(' ', '-'));
    waves.add(new Wave(line, parts(waveform)));
    getChildren().add(line);
  }

  private static List<Double> parts(Waveform waveform) {
    int points = Math.min(MOST_POINTS, waveform.length());
    List<Double> volts =
        IntStream.range(0, points)
            .mapToObj(i -> waveform.voltsAt((int) ((long) i * waveform.length() / points)))
            .toList();
    double largest = volts.stream().mapToDouble(Math::abs).max().orElse(0);
    return volts.stream().map(v -> largest == 0 ? 0 : v / largest).toList();
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double middle = getHeight() / 2;
    clip.setWidth(width);
    clip.setHeight(getHeight());
    zero.setStartY(middle);
    zero.setEndX(width);
    zero.setEndY(middle);
    for (Wave wave : waves) {
      List<Double> points = new ArrayList<>();
      for (int i = 0; i < wave.parts().size(); i++) {
        points.add(width * i / Math.max(1, wave.parts().size() - 1));
        points.add(middle - FILLED_PART * middle * wave.parts().get(i));
      }
      wave.line().getPoints().setAll(points);
    }
  }
}
