package mainsgap.arming;

import java.time.Duration;
import java.util.Optional;
import mainsgap.scope.Oscilloscope;
import mainsgap.signal.Capture;
import mainsgap.signal.Event;
import mainsgap.transfer.MeasuringTask;

/** The supply as the loop deals with it: asks for a move of the switch and looks at what it did. */
final class Mains {
  private final MainsSwitch mainsSwitch;
  private final Oscilloscope instrument;
  private final MeasuringTask task;
  private final Preflight preflight;
  private final Pace pace;
  private final Waits waits;
  private final LoopListener face;
  private boolean wasOpened;
  private boolean unknownWasSaid;

  Mains(LoopPlan plan, Rig rig, Waits waits, LoopListener face) {
    this.mainsSwitch = rig.mains();
    this.instrument = rig.instrument();
    this.task = plan.task();
    this.preflight = new Preflight(plan.capture(), plan.task());
    this.pace = plan.pace();
    this.waits = waits;
    this.face = face;
  }

  /** Looks at the live signal before anything is armed. */
  void check() {
    Capture look = instrument.look();
    preflight
        .complaintAboutMains(look)
        .or(() -> preflight.complaintAboutOutput(look))
        .ifPresent(
            complaint -> {
              throw new RigException(complaint);
            });
    face.noted(preflight.readings(look));
  }

  /** Whether the switch has to move before the first arming: mains can only return once it left. */
  boolean mustLeaveFirst() {
    return task.event() == Event.RESTORATION;
  }

  /** Asks for the move that causes the event. */
  void askForEvent() {
    ask(SwitchMove.causing(task.event()));
  }

  /** Asks for the move back, sees that it was made where that can be seen, and lets all settle. */
  void bringBack() {
    waits.forgetProceed();
    SwitchMove back = SwitchMove.causing(task.event()).back();
    ask(back);
    awaitSupply(back);
    waits.rest("the unit to settle", pace.settle());
    awaitOutput();
  }

  /** At the end the switch stays as it is; an open one leaves a live output that looks dead. */
  void sayWhatIsLive() {
    if (wasOpened) {
      face.noted(
          "the mains switch was left open: the unit's output is still live from its battery;"
              + " closing the switch needs a hand");
    }
  }

  private void ask(SwitchMove move) {
    wasOpened = move == SwitchMove.OPEN;
    mainsSwitch.ask(move, face::prompted);
  }

  private void awaitSupply(SwitchMove move) {
    MainsState wanted = move == SwitchMove.CLOSE ? MainsState.PRESENT : MainsState.ABSENT;
    MainsState[] seen = {MainsState.UNKNOWN};
    boolean settled =
        waits.until(
            "mains " + (wanted == MainsState.PRESENT ? "to be back" : "to be off"),
            pace.recoveryWait(),
            () -> {
              seen[0] = preflight.supply(instrument.look());
              return seen[0] == wanted || seen[0] == MainsState.UNKNOWN;
            });
    if (!settled) {
      throw new RigException(
          "mains is not "
              + (wanted == MainsState.PRESENT ? "back" : "off")
              + " "
              + Sentences.of(pace.recoveryWait())
              + " after it was asked for: look at the switch, the fuse and the mains probe");
    }
    if (seen[0] == MainsState.UNKNOWN && !unknownWasSaid) {
      unknownWasSaid = true;
      face.noted(
          "the supply is unknown: no channel watches the mains, and the output may be fed by the"
              + " backup; make sure of the switch yourself before you go on");
    }
  }

  /** A unit may take its time, or need a hand, until it feeds its output again. */
  private void awaitOutput() {
    Duration limit = pace.recoveryWait();
    String[] complaint = {""};
    boolean fed =
        waits.until(
            "the unit's output to be back",
            limit,
            () -> {
              Optional<String> found = preflight.complaintAboutOutput(instrument.look());
              complaint[0] = found.orElse("");
              return found.isEmpty();
            });
    if (!fed) {
      throw new RigException(
          "the unit's output is not back within " + Sentences.of(limit) + ": " + complaint[0]);
    }
  }
}
