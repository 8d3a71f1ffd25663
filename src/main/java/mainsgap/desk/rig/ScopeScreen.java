package mainsgap.desk.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import mainsgap.bench.RigCheckEnd.Seen;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import org.jspecify.annotations.Nullable;

/** The screen of the drawn scope: a few cycles of each real signal, in a lane of its own. */
final class ScopeScreen extends Region {
  private static final int MOST_POINTS = 600;
  private static final double FILLED_PART = 0.8;

  /** One signal, from −1 to 1 evenly over the screen. */
  private record Lane(Line zero, Polyline wave, List<Double> parts) {}

  private final List<Lane> lanes = new ArrayList<>();

  ScopeScreen() {
    getStyleClass().add("rig-screen");
    show(null);
  }

  /** What was seen; an idle line where null. */
  void show(@Nullable Seen seen) {
    lanes.clear();
    getChildren().clear();
    if (seen == null) {
      add("idle", List.of());
    } else {
      for (ChannelRole role : ChannelRole.values()) {
        seen.look()
            .waveform(role)
            .ifPresent(signal -> add(role.words().replace(' ', '-'), parts(signal)));
      }
    }
    requestLayout();
  }

  private void add(String name, List<Double> parts) {
    Lane lane = new Lane(new Line(), new Polyline(), parts);
    lane.zero().getStyleClass().add("rig-screen-zero");
    lane.wave().getStyleClass().addAll("rig-wave", "wave-" + name);
    lanes.add(lane);
    getChildren().addAll(lane.zero(), lane.wave());
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
    double height = getHeight() / lanes.size();
    for (int i = 0; i < lanes.size(); i++) {
      layOut(lanes.get(i), (i + 0.5) * height, FILLED_PART * height / 2);
    }
  }

  private void layOut(Lane lane, double middle, double reach) {
    lane.zero().setEndX(getWidth());
    lane.zero().setStartY(middle);
    lane.zero().setEndY(middle);
    int points = lane.parts().size();
    List<Double> places = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      places.add(getWidth() * i / Math.max(1, points - 1));
      places.add(middle - reach * lane.parts().get(i));
    }
    lane.wave().getPoints().setAll(places);
  }
}
