package mainsgap.simulation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import mainsgap.simulation.TrialTruth.Change;
import org.jspecify.annotations.Nullable;

/**
 * The power side of the bench: mains, hand, unit, load, as they stand now. All access is under its
 * own monitor, which the scopes on the bench share, so that a movement of the switch and an
 * acquisition never cross.
 */
final class PowerSide {
  private final BackupUnit unit;
  private final List<Consumer<Episode>> watchers = new ArrayList<>();
  private final Map<Integer, TrialTruth> openingTruths = new HashMap<>();
  private final Map<Integer, TrialTruth> closingTruths = new HashMap<>();
  private Episode now;
  private boolean mainsClosed = true;
  private boolean commanded;
  private int openings;
  private int closings;
  private @Nullable TrialTruth lastTruth;

  PowerSide(SimulatedBenchSettings settings) {
    this.unit = unitOf(settings);
    this.now = unit.atRest();
  }

  static BackupUnit unitOf(SimulatedBenchSettings settings) {
    return settings.unit() == SimulatedUnit.DOUBLE_CONVERSION
        ? new DoubleConversionUnit(settings)
        : new RelayUnit(settings);
  }

  /** Lets {@code watcher} know of each movement of the switch. */
  synchronized void watch(Consumer<Episode> watcher) {
    watchers.add(watcher);
  }

  synchronized void openMains() {
    open(null);
  }

  /** An electronic switch opens cleanly at that angle of the mains. */
  synchronized void openMainsAt(double degrees) {
    open(degrees);
  }

  /** A program commands the mains from now on: the bench moves it no more by itself. */
  synchronized void takeCommand() {
    commanded = true;
  }

  synchronized boolean isCommanded() {
    return commanded;
  }

  private void open(@Nullable Double degrees) {
    if (mainsClosed) {
      mainsClosed = false;
      openings++;
      become(unit.opening(new Opening(openings, degrees)));
    }
  }

  synchronized void closeMains() {
    if (!mainsClosed) {
      mainsClosed = true;
      closings++;
      become(unit.closing(closings));
    }
  }

  synchronized boolean isMainsClosed() {
    return mainsClosed;
  }

  /** The newest movement, or the rest before the first. */
  synchronized Episode now() {
    return now;
  }

  /** Keeps the truth of an event on the axis of the record that caught it. */
  synchronized void caught(TrialTruth truth) {
    (truth.change() == Change.OPENING ? openingTruths : closingTruths).put(truth.number(), truth);
    lastTruth = truth;
  }

  synchronized Optional<TrialTruth> truth(Change change, int number) {
    Map<Integer, TrialTruth> truths = change == Change.OPENING ? openingTruths : closingTruths;
    return Optional.ofNullable(truths.get(number));
  }

  synchronized Optional<TrialTruth> lastTruth() {
    return Optional.ofNullable(lastTruth);
  }

  private void become(Episode episode) {
    now = episode;
    watchers.forEach(watcher -> watcher.accept(episode));
  }
}
