package mainsgap.desk.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Which trials are laid over each other: picked by a rule until a person ticks. For the UI thread.
 */
final class TraceChoice {
  /** More cannot be told apart by colour and dashes. */
  static final int MOST = 16;

  private final ReadOnlyObjectWrapper<TracePick> pick =
      new ReadOnlyObjectWrapper<>(TracePick.LONGEST_OF_EACH);
  private final ReadOnlyObjectWrapper<Set<TrialKey>> chosen = new ReadOnlyObjectWrapper<>(Set.of());
  private List<TrialRow> rows = List.of();
  private @Nullable TracePick wanted;

  ReadOnlyObjectProperty<TracePick> pickProperty() {
    return pick.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Set<TrialKey>> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** These trials can be chosen from. */
  void among(List<TrialRow> shown) {
    rows = shown;
    choose();
  }

  void pick(TracePick rule) {
    wanted = rule;
    choose();
  }

  /** Ticks a trial, or no longer; what the rule had picked stays. */
  void tick(TrialKey trial, boolean ticked) {
    Set<TrialKey> now = new LinkedHashSet<>(chosen.get());
    boolean changed = ticked ? now.add(trial) : now.remove(trial);
    if (changed) {
      wanted = TracePick.TICKED;
      pick.set(TracePick.TICKED);
      chosen.set(Set.copyOf(now));
    }
  }

  /** Of one unit alone, all can be seen together; of many, one each. */
  private void choose() {
    long units = rows.stream().map(row -> row.key().file()).distinct().count();
    TracePick rule =
        wanted == null ? units > 1 ? TracePick.LONGEST_OF_EACH : TracePick.LONGEST_OF_ALL : wanted;
    pick.set(rule);
    chosen.set(
        switch (rule) {
          case LONGEST_OF_EACH -> keys(longestOfEach());
          case LONGEST_OF_ALL -> keys(longest());
          case TICKED -> stillThere();
        });
  }

  private List<TrialRow> longest() {
    return rows.stream()
        .filter(TraceChoice::counts)
        .sorted(Comparator.comparingDouble(TrialRow::millis).reversed())
        .limit(MOST)
        .toList();
  }

  private List<TrialRow> longestOfEach() {
    Map<Object, TrialRow> longest = new LinkedHashMap<>();
    for (TrialRow row : rows) {
      if (counts(row)) {
        longest.merge(row.key().file(), row, (a, b) -> b.millis() > a.millis() ? b : a);
      }
    }
    return new ArrayList<>(longest.values()).subList(0, Math.min(MOST, longest.size()));
  }

  private static boolean counts(TrialRow row) {
    return row.hasLoss() && row.trial().setAsideReason() == null;
  }

  private Set<TrialKey> stillThere() {
    Set<TrialKey> there = keys(rows);
    Set<TrialKey> still = new LinkedHashSet<>(chosen.get());
    still.retainAll(there);
    return Set.copyOf(still);
  }

  private static Set<TrialKey> keys(List<TrialRow> of) {
    return of.stream().map(TrialRow::key).collect(Collectors.toUnmodifiableSet());
  }
}
