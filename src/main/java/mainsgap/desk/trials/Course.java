package mainsgap.desk.trials;

import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.arming.LoopState;
import mainsgap.arming.Progress;
import mainsgap.arming.Prompt;
import mainsgap.arming.SwitchMove;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.TrialReport;
import mainsgap.desk.manners.Sounds;
import mainsgap.desk.pictures.TrialMark;
import mainsgap.desk.sound.SoundWord;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * The course of a series as it is told: what the sign says, what is waited for, and the sounds.
 * Once a stop is asked for, nothing is asked of the hand any more. For the UI thread.
 */
final class Course {
  private final Sounds sounds;
  private final ReadOnlyObjectWrapper<Sign> sign;
  private final ReadOnlyObjectWrapper<@Nullable Progress> wait = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper stopping = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper commanded = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper wordAsked = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper note = new ReadOnlyStringWrapper("");

  private boolean begun;
  private boolean emergency;
  private @Nullable LoopState state;

  Course(Sounds sounds, String whyNotReady) {
    this.sounds = sounds;
    this.sign = new ReadOnlyObjectWrapper<>(Signs.idle(whyNotReady));
  }

  ReadOnlyObjectProperty<Sign> signProperty() {
    return sign.getReadOnlyProperty();
  }

  /** The wait that goes on; null where there is none. */
  ReadOnlyObjectProperty<@Nullable Progress> waitProperty() {
    return wait.getReadOnlyProperty();
  }

  ReadOnlyBooleanProperty runningProperty() {
    return running.getReadOnlyProperty();
  }

  /** Whether a stop was asked for and the series has not ended yet. */
  ReadOnlyBooleanProperty stoppingProperty() {
    return stopping.getReadOnlyProperty();
  }

  /** Whether the program moves the mains switch. */
  ReadOnlyBooleanProperty commandedProperty() {
    return commanded.getReadOnlyProperty();
  }

  /** Whether a person's word is asked for, on which the program closes the switch. */
  ReadOnlyBooleanProperty wordAskedProperty() {
    return wordAsked.getReadOnlyProperty();
  }

  /** What was last said that the user should read. */
  ReadOnlyStringProperty noteProperty() {
    return note.getReadOnlyProperty();
  }

  /** Says whether a series could start, until the first one has. */
  void idle(String whyNotReady) {
    if (!begun) {
      sign.set(Signs.idle(whyNotReady));
    }
  }

  void begins() {
    begun = true;
    emergency = false;
    state = null;
    wait.set(null);
    note.set("");
    commanded.set(false);
    wordAsked.set(false);
    stopping.set(false);
    running.set(true);
    sign.set(Signs.connecting());
  }

  void stopAskedFor() {
    stopping.set(true);
    wordAsked.set(false);
    wait.set(null);
    sign.set(emergency ? Signs.emergency(commanded.get()) : Signs.stopping(commanded.get()));
  }

  void emergencyAskedFor() {
    emergency = true;
    stopAskedFor();
  }

  /** The word was given on which the program closes the switch. */
  void wordGiven() {
    wordAsked.set(false);
    say(Signs.closing());
  }

  void noted(String sentence) {
    note.set(TrialWords.capital(sentence));
  }

  void planned(List<String> explanation) {
    if (!explanation.isEmpty()) {
      noted(explanation.get(0));
    }
  }

  void switchCommanded(String words) {
    commanded.set(true);
    noted(words);
  }

  void entered(LoopState next) {
    LoopState before = state;
    state = next;
    wait.set(null);
    wordAsked.set(false);
    switch (next) {
      case ARMED -> {
        say(Signs.armed(commanded.get()));
        sound(SoundWord.ARMED);
      }
      case TRIGGERED -> {
        say(Signs.handsOff(next));
        sound(SoundWord.CAUGHT);
      }
      case PREFLIGHT, READING, ANALYSED -> say(Signs.handsOff(next));
      case RECOVERING -> {
        if (before == LoopState.ARMED) {
          say(new Sign(Sign.Kind.NO_TRIGGER, note.get()));
          sound(SoundWord.FAULT);
        } else if (commanded.get()) {
          say(Signs.movingBack());
        }
      }
      case LOGGED, COMPLETE, STOPPED, FAULTED -> {}
    }
  }

  void prompted(Prompt prompt) {
    String words = TrialWords.sentence(prompt.sentence());
    if (prompt.asksForWord()) {
      wordAsked.set(!stopping.get());
      say(new Sign(Sign.Kind.WORD_ASKED, words));
    } else if (state == LoopState.ARMED) {
      say(new Sign(Sign.Kind.ARMED, words));
    } else if (prompt.move() == SwitchMove.CLOSE) {
      say(new Sign(Sign.Kind.CLOSE_SWITCH, words));
      sound(SoundWord.CLOSE_THE_SWITCH);
    } else {
      say(new Sign(Sign.Kind.OPEN_SWITCH, words));
    }
  }

  void progressed(Progress progress) {
    if (stopping.get()) {
      return;
    }
    wait.set(progress);
    if (progress.canBeCutShort() && sign.get().kind() != Sign.Kind.SETTLING) {
      say(Signs.settling(progress));
    }
  }

  void trialFinished(TrialReport trial) {
    say(Signs.of(trial));
    switch (TrialMark.of(trial)) {
      case PASSED -> sound(SoundWord.PASSED);
      case FAILED -> sound(SoundWord.FAILED);
      case INCONCLUSIVE, MEASURED, REFUSED, SET_ASIDE -> {}
    }
  }

  void ended(SeriesEnd end) {
    over(Signs.of(end, commanded.get(), emergency));
  }

  /** Something was added to the session of a series that is complete. */
  void judgedAnew(@Nullable Verdict verdict) {
    Sign before = sign.get();
    if (before.kind().isOfWholeSeries()) {
      sign.set(new Sign(Signs.complete(verdict), before.toDo()));
    }
  }

  /** The session of the series cannot be read back as it was written. */
  void notSound(String why) {
    if (!running.get()) {
      over(Signs.notSound(why));
    }
  }

  void broken(RuntimeException fault) {
    over(Signs.of(fault));
  }

  private void over(Sign last) {
    running.set(false);
    stopping.set(false);
    wordAsked.set(false);
    wait.set(null);
    sign.set(last);
    if (last.kind() == Sign.Kind.FAULT) {
      sounds.say(SoundWord.FAULT);
    }
  }

  /** Once a stop is asked for, no sound asks for a move of the hand either. */
  private void sound(SoundWord word) {
    if (!stopping.get()) {
      sounds.say(word);
    }
  }

  private void say(Sign next) {
    if (!stopping.get()) {
      sign.set(next);
    }
  }
}
