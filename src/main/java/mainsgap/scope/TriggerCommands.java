package mainsgap.scope;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The triggers of a family of instruments, and what sets each.
 *
 * @param forced prepares a record that does not wait for the signal
 * @param quiet the kinds that fire by themselves once a signal was quiet for a time
 * @param edge by slope; empty where there is none
 * @param external by slope; empty where there is no external trigger input
 */
record TriggerCommands(
    List<CommandTemplate> forced,
    Map<CatchMethod, List<CommandTemplate>> quiet,
    Map<Slope, List<CommandTemplate>> edge,
    Map<Slope, List<CommandTemplate>> external) {

  TriggerCommands {
    forced = List.copyOf(forced);
    quiet = Map.copyOf(quiet);
    edge = Map.copyOf(edge);
    external = Map.copyOf(external);
  }

  /** The ways to catch an event that the family offers; records need no trigger. */
  Set<CatchMethod> methods() {
    Set<CatchMethod> methods =
        EnumSet.of(CatchMethod.FORCED_RECORD, CatchMethod.BACK_TO_BACK_RECORDS);
    methods.addAll(quiet.keySet());
    if (!edge.isEmpty()) {
      methods.add(CatchMethod.EDGE_TRIGGER);
    }
    if (!external.isEmpty()) {
      methods.add(CatchMethod.EXTERNAL_TRIGGER);
    }
    return methods;
  }

  /** What sets {@code trigger}; none where the family has no such trigger. */
  List<CommandTemplate> setting(PlannedTrigger trigger) {
    List<CommandTemplate> commands =
        switch (trigger.method()) {
          case EDGE_TRIGGER -> edge.get(trigger.slope());
          case EXTERNAL_TRIGGER -> external.get(trigger.slope());
          default -> quiet.get(trigger.method());
        };
    if (commands == null) {
      throw new ScopeException(
          "the profile of this instrument has no "
              + trigger.method().words()
              + ": plan without it");
    }
    return commands;
  }
}
