package mainsgap.desk.trials;

import mainsgap.arming.LoopState;
import mainsgap.arming.Progress;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.desk.pictures.TrialMark;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/** What the sign says at each point of a series: which words, never when. */
final class Signs {
  private Signs() {}

  /** Nothing has run yet; {@code whyNotReady} is empty where a series can start. */
  static Sign idle(String whyNotReady) {
    return whyNotReady.isEmpty()
        ? new Sign(Sign.Kind.READY, "Start the series once everybody stands clear.")
        : new Sign(Sign.Kind.NOT_READY, TrialWords.sentence(whyNotReady));
  }

  static Sign connecting() {
    return new Sign(Sign.Kind.CONNECTING, "The instrument is being reached.");
  }

  /**
   * The instrument watches, before the hand is asked; {@code commanded} where no hand moves mains.
   */
  static Sign armed(boolean commanded) {
    return new Sign(
        Sign.Kind.ARMED,
        commanded
            ? "Hands off: the program moves the mains switch."
            : "The instrument watches the load's voltage.");
  }

  /** A state in which the hand has nothing to do. */
  static Sign handsOff(LoopState state) {
    return switch (state) {
      case PREFLIGHT ->
          new Sign(Sign.Kind.CHECKING, "Hands off the rig: its live signal is looked at.");
      case TRIGGERED ->
          new Sign(Sign.Kind.CAUGHT, "Leave the switch as it is: the record goes on.");
      case READING -> new Sign(Sign.Kind.READING, "Leave the switch as it is: the record is read.");
      case ANALYSED -> new Sign(Sign.Kind.LOGGING, "Measured; the raw record goes to the disk.");
      case ARMED, LOGGED, RECOVERING, COMPLETE, STOPPED, FAULTED ->
          throw new IllegalArgumentException(state + " has words of its own");
    };
  }

  static Sign settling(Progress progress) {
    return new Sign(
        Sign.Kind.SETTLING, "Waiting for " + progress.what() + ". Enter goes on sooner.");
  }

  /** The program moves the switch back by itself. */
  static Sign movingBack() {
    return new Sign(Sign.Kind.SETTLING, "Hands off: the program moves the mains switch.");
  }

  /** The word was given on which the program closes the switch. */
  static Sign closing() {
    return new Sign(Sign.Kind.SETTLING, "Hands off: the program closes the mains switch.");
  }

  /** A trial has come in. */
  static Sign of(TrialReport trial) {
    String reason = TrialWords.reason(trial);
    return new Sign(
        kind(TrialMark.of(trial)),
        reason.isEmpty() ? TrialWords.transfer(trial.outcome()) : TrialWords.capital(reason));
  }

  private static Sign.Kind kind(TrialMark mark) {
    return switch (mark) {
      case PASSED -> Sign.Kind.PASSED;
      case FAILED -> Sign.Kind.FAILED;
      case INCONCLUSIVE -> Sign.Kind.INCONCLUSIVE;
      case MEASURED, SET_ASIDE -> Sign.Kind.MEASURED;
      case REFUSED -> Sign.Kind.REFUSED;
    };
  }

  static Sign stopping(boolean commanded) {
    return new Sign(
        Sign.Kind.STOPPING,
        commanded
            ? "The mains switch opens, the instrument is disarmed."
            : "The instrument is disarmed; the mains switch stays as your hand left it.");
  }

  /** Mains is to go off at once; where a hand has to do it, that is said loudly. */
  static Sign emergency(boolean commanded) {
    return commanded
        ? stopping(true)
        : new Sign(
            Sign.Kind.OPEN_SWITCH,
            "Emergency: no program moves this switch. Open it by hand, now.");
  }

  /** The series is over. */
  static Sign of(SeriesEnd end, boolean commanded, boolean emergency) {
    String sentence = TrialWords.sentence(end.sentence());
    return switch (end.kind()) {
      case COMPLETE -> new Sign(complete(end.figures().verdict()), sentence);
      case INCOMPLETE -> new Sign(Sign.Kind.INCOMPLETE, sentence);
      case STOPPED ->
          new Sign(Sign.Kind.STOPPED, emergency ? afterEmergency(commanded) : afterStop(commanded));
      case NOTHING_MEASURED, WRONG_USE, INSTRUMENT_FAILED, SESSION_FAILED ->
          new Sign(Sign.Kind.FAULT, sentence);
    };
  }

  /** All wanted trials are measured: how the claim stands by them. */
  static Sign.Kind complete(@Nullable Verdict verdict) {
    if (verdict == null) {
      return Sign.Kind.COMPLETE;
    }
    return switch (verdict) {
      case PASS -> Sign.Kind.SERIES_PASSED;
      case FAIL -> Sign.Kind.SERIES_FAILED;
      case INCONCLUSIVE -> Sign.Kind.NOT_YET_SHOWN;
    };
  }

  /** What was measured was shown, and cannot be proved any more. */
  static Sign notSound(String why) {
    return new Sign(
        Sign.Kind.FAULT,
        "The session could not be read back as it was written: "
            + why
            + ". Keep the file as it is, and run the series again into another folder.");
  }

  /** The program itself failed. */
  static Sign of(RuntimeException fault) {
    return new Sign(
        Sign.Kind.FAULT,
        "The program failed ("
            + fault.getMessage()
            + "): look at the switch and the instrument; what was logged stays.");
  }

  private static String afterStop(boolean commanded) {
    return commanded
        ? "Stopped by you: the mains switch was told to open; prove the rig dead before you touch it, and"
            + " remember that the unit's output may still be live. What was logged stays."
        : "Stopped by you: the mains switch is as your hand left it, and the unit's output may still be"
            + " live. What was logged stays.";
  }

  private static String afterEmergency(boolean commanded) {
    return commanded
        ? "Emergency off: the mains switch was told to open. Prove the rig dead before you touch it: the"
            + " unit's output may still be live."
        : "Emergency: the instrument is disarmed. Open the mains switch by hand; the unit's output"
            + " may still be live.";
  }
}
