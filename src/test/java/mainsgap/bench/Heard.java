package mainsgap.bench;

import java.util.ArrayList;
import java.util.List;
import mainsgap.arming.LoopState;
import mainsgap.arming.Prompt;

/** Remembers what a series told. */
final class Heard implements SeriesListener {
  final List<String> plan = new ArrayList<>();
  final List<String> prompts = new ArrayList<>();
  final List<String> notes = new ArrayList<>();
  private final List<LoopState> states = new ArrayList<>();

  LoopState lastState() {
    return states.get(states.size() - 1);
  }

  boolean wasIn(LoopState state) {
    return states.contains(state);
  }

  @Override
  public void planned(List<String> explanation) {
    plan.addAll(explanation);
  }

  @Override
  public void entered(LoopState state) {
    states.add(state);
  }

  @Override
  public void prompted(Prompt prompt) {
    prompts.add(prompt.sentence());
  }

  @Override
  public void noted(String sentence) {
    notes.add(sentence);
  }
}
