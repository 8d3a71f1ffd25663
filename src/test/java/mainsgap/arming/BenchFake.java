package mainsgap.arming;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import mainsgap.scope.AcquisitionState;
import mainsgap.scope.CapturePlan;
import mainsgap.scope.CatchMethod;
import mainsgap.scope.Oscilloscope;
import mainsgap.scope.ScopeException;
import mainsgap.scope.ScopeLimits;
import mainsgap.scpi.Identity;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;

/** An oscilloscope and a switch that do what a test tells them, and remember what was asked. */
final class BenchFake implements Oscilloscope, MainsSwitch {
  private static final List<AcquisitionState> A_TRIGGER =
      List.of(
          AcquisitionState.FILLING,
          AcquisitionState.WATCHING,
          AcquisitionState.WATCHING,
          AcquisitionState.RECORDING,
          AcquisitionState.COMPLETE);

  final List<String> calls = new ArrayList<>();
  private final Map<String, Runnable> actions = new HashMap<>();
  private final Deque<AcquisitionState> states = new ArrayDeque<>();
  private List<AcquisitionState> script = A_TRIGGER;
  Capture live = Signals.output(Signals.sine(230, 50));
  boolean armed;
  boolean mainsClosed = true;
  boolean handObeys = true;

  /** Runs {@code action} when {@code step} is called next, and each time after. */
  BenchFake on(String step, Runnable action) {
    actions.put(step, action);
    return this;
  }

  BenchFake failingAt(String step) {
    return on(
        step,
        () -> {
          throw new ScopeException("the link broke at " + step);
        });
  }

  BenchFake neverTriggering() {
    script = List.of(AcquisitionState.WATCHING);
    return this;
  }

  private void called(String step) {
    calls.add(step);
    actions.getOrDefault(step, () -> {}).run();
  }

  @Override
  public Identity identity() {
    return new Identity("invented", "fake", "0", "0");
  }

  @Override
  public ScopeLimits limits() {
    Set<CatchMethod> both = EnumSet.allOf(CatchMethod.class);
    return new ScopeLimits(2, 1, 10, 1e-6, 1e-3, 100, 1_000_000, 12, 50, both);
  }

  @Override
  public void configure(CapturePlan plan) {
    called("configure");
  }

  @Override
  public Capture look() {
    called("look");
    return live;
  }

  @Override
  public void arm() {
    armed = true;
    states.clear();
    states.addAll(script);
    called("arm");
  }

  @Override
  public AcquisitionState state() {
    called("state");
    return states.size() > 1 ? states.remove() : states.element();
  }

  @Override
  public Capture read() {
    called("read");
    return Signals.output(Signals.sine(230, 50));
  }

  @Override
  public void disarm() {
    called("disarm");
    armed = false;
  }

  @Override
  public void close() {
    called("close");
  }

  @Override
  public void ask(Prompt prompt, Consumer<Prompt> hand) {
    called(prompt.move().name());
    hand.accept(prompt);
    if (handObeys) {
      mainsClosed = prompt.move() == SwitchMove.CLOSE;
    }
  }

  /** From now on the live signal has a mains channel that follows the switch. */
  BenchFake withMainsChannel() {
    on("look", () -> live = Signals.both(Signals.sine(230, 50), mains()));
    return this;
  }

  private double[] mains() {
    return Signals.sine(mainsClosed ? 230 : 0, 50);
  }

  static Map<ChannelRole, CapturePlan.ChannelPlan> channels() {
    return Map.of(
        ChannelRole.OUTPUT,
        new CapturePlan.ChannelPlan(1, 100, 500, 325),
        ChannelRole.MAINS,
        new CapturePlan.ChannelPlan(2, 100, 500, 325));
  }
}
