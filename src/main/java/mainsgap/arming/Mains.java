package mainsgap.arming;

import java.time.Duration;
import java.util.Optional;
import mainsgap.scope.Oscilloscope;
import mainsgap.signal.Capture;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.MeasuringTask;

/**
 * The supply as the loop deals with it: asks for a move of the switch and looks at what it did.
 * Closing it leaves a commanded switch off, whatever happened.
 */
final class Mains implements AutoCloseable {
  private final MainsSwitch mainsSwitch;
  private final Oscilloscope instrument;
  private final MeasuringTask task;
  private final Preflight preflight;
  private final Pace pace;
  private final PointOnWave pointOnWave;
  private final Consent consent;
  private final Waits waits;
  private final LoopListener face;
  private boolean wasOpened;
  private boolean unknownWasSaid;

  Mains(LoopPlan plan, Rig rig, Consent consent, Waits waits, LoopListener face) {
    this.mainsSwitch = rig.mains();
    this.instrument = rig.instrument();
    this.task = plan.task();
    this.preflight = new Preflight(plan.capture(), plan.task());
    this.pace = plan.pace();
    this.pointOnWave = new PointOnWave(plan.timing(), plan.task());
    this.consent = consent;
    this.waits = waits;
    this.face = face;
  }

  /** Whether a commanded switch has to be closed before there is a signal to look at. */
  boolean isOff() {
    if (!mainsSwitch.closedBy().isCommanded()) {
      return false;
    }
    return switch (mainsSwitch.position()) {
      case OPEN -> true;
      case CLOSED -> false;
      case UNKNOWN -> preflight.supply(instrument.look()) != MainsState.PRESENT;
    };
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

  /** Asks for the move that causes the event: the only opening that is planned and armed for. */
  void askForEvent() {
    Prompt prompt = Prompt.forEvent(task.event());
    if (prompt.move() == SwitchMove.OPEN && mainsSwitch.closedBy().isCommanded()) {
      openOnTheWave(prompt);
    } else {
      ask(prompt);
    }
  }

  /** Brings mains, and the unit, to where the first look is taken. */
  void turnOn() {
    bringTo(Prompt.toClose());
  }

  /** Asks for the move back, sees that it was made where that can be seen, and lets all settle. */
  void bringBack() {
    Prompt back = Prompt.afterEvent(task.event());
    if (back.move() == SwitchMove.OPEN) {
      pauseOnMains();
    }
    bringTo(back);
    if (back.move() == SwitchMove.CLOSE) {
      pauseOnMains();
    }
  }

  /** A commanded switch is left off, and closes no more. */
  @Override
  public void close() {
    if (mainsSwitch.closedBy().isCommanded()) {
      mainsSwitch.leaveOff();
      wasOpened = true;
    }
  }

  /** At the end an open switch leaves a live output that looks dead. */
  void sayWhatIsLive() {
    if (wasOpened) {
      face.noted(
          mainsSwitch.closedBy().isCommanded()
              ? "the program opened the mains switch and leaves it open: the unit's output is still"
                  + " live from its battery; closing the switch needs a person"
              : "the mains switch was left open: the unit's output is still live from its battery;"
                  + " closing the switch needs a hand");
    }
  }

  private void openOnTheWave(Prompt prompt) {
    Optional<Double> angle = pointOnWave.nextAngleDegrees();
    waits.pass("a random delay", pointOnWave.nextDelay());
    wasOpened = true;
    angle.ifPresentOrElse(mainsSwitch::openAt, () -> mainsSwitch.ask(prompt, face::prompted));
  }

  private void bringTo(Prompt prompt) {
    waits.forgetProceed();
    ask(prompt);
    awaitSupply(prompt.move());
    waits.rest("the unit to settle", pace.settle());
    awaitOutput();
  }

  /** Mains is on: the unit charges its battery. */
  private void pauseOnMains() {
    waits.forgetProceed();
    waits.rest("the pause between trials, with mains on", pace.pause());
  }

  private void ask(Prompt prompt) {
    if (prompt.move() == SwitchMove.CLOSE && mainsSwitch.closedBy() == ClosedBy.PROGRAM_ON_A_WORD) {
      awaitWord();
    }
    wasOpened = prompt.move() == SwitchMove.OPEN;
    mainsSwitch.ask(prompt, face::prompted);
  }

  /** A word that was given before it was asked for does not count. */
  private void awaitWord() {
    consent.forget();
    face.prompted(Prompt.forWord());
    boolean given =
        waits.until(
            "the word to close the mains switch",
            pace.consentWait(),
            () -> {
              consent.reasonWithheld().ifPresent(Mains::refuse);
              return consent.take();
            });
    if (!given) {
      throw new RigException(
          "nobody gave the word to close the mains switch within "
              + Sentences.of(pace.consentWait())
              + ": mains stays off; go on with the session when somebody is there");
    }
  }

  private static void refuse(String why) {
    throw new RigException(why);
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
          "the unit's output is not back within "
              + Sentences.of(limit)
              + ": "
              + complaint[0]
              + (mustLeaveFirst() ? "; is its battery empty?" : ""));
    }
  }
}
