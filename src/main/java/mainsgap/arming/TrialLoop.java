package mainsgap.arming;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import mainsgap.arming.LoopEnd.Reason;
import mainsgap.link.LinkException;
import mainsgap.scope.ScopeException;
import mainsgap.scpi.ScpiException;
import mainsgap.session.Addition;
import mainsgap.session.Remark;
import mainsgap.session.SessionException;
import mainsgap.session.Trial;
import mainsgap.signal.Capture;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.Refused;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The bench procedure: arms, asks the hand, reads, measures, logs and recovers, until the series is
 * done. The thread that calls {@link #run} owns the instrument and writes the log. Run it once.
 */
public final class TrialLoop {
  private static final Logger LOG = LoggerFactory.getLogger(TrialLoop.class);

  private final LoopPlan plan;
  private final Rig rig;
  private final LoopListener face;
  private final Waits waits;
  private final Consent consent;
  private final Additions additions;
  private @Nullable LoopState state;
  private int measured;
  private int repeated;

  /** Creates the loop; nothing is sent yet. */
  public TrialLoop(LoopPlan plan, Rig rig, Reins reins, LoopListener listener) {
    this.plan = plan;
    this.rig = rig;
    this.face = new SteadyListener(listener);
    this.waits = new Waits(reins, plan.pace().poll(), face::progressed, this::logAdditions);
    this.additions = reins.additions();
    this.consent = reins.consent();
  }

  /**
   * Runs the series to its end. When it returns, whatever happened, a commanded mains switch is
   * open and the instrument is disarmed, or the end says loudly that it is not so.
   */
  public LoopEnd run() {
    enter(LoopState.PREFLIGHT);
    Mains supply = new Mains(plan, rig, consent, waits, face);
    LoopEnd end;
    try (ArmedInstrument armed = new ArmedInstrument(rig.instrument(), plan, waits);
        Mains mains = supply) {
      end = series(armed, mains);
    } catch (StoppedException e) {
      boolean safe = e.getSuppressed().length == 0;
      end = faulted(safe ? Reason.STOPPED : Reason.INSTRUMENT, e);
    } catch (RigException e) {
      end = faulted(Reason.RIG_NOT_RIGHT, e);
    } catch (ScopeException | ScpiException | LinkException e) {
      end = faulted(Reason.INSTRUMENT, e);
    } catch (SessionException e) {
      end = faulted(Reason.SESSION, e);
    }
    LoopEnd kept = finish(end);
    supply.sayWhatIsLive();
    return kept;
  }

  private LoopEnd series(ArmedInstrument armed, Mains mains) {
    rig.instrument().configure(plan.capture());
    if (mains.isOff()) {
      enter(LoopState.RECOVERING);
      mains.turnOn();
    }
    mains.check();
    if (mains.mustLeaveFirst()) {
      recover(mains);
    }
    while (true) {
      Optional<Trial> trial = attempt(armed, mains);
      if (trial.isPresent() && trial.get().outcome().kind() != Outcome.Kind.REFUSED) {
        measured++;
      } else {
        repeated++;
      }
      if (measured == plan.trials()) {
        return end(Reason.DONE, Sentences.measured(measured));
      }
      if (repeated > plan.pace().maxRepeats()) {
        return end(Reason.REPEATS_SPENT, repeatsSpent(trial));
      }
      recover(mains);
    }
  }

  /** One attempt; empty where it gave no capture. */
  private Optional<Trial> attempt(ArmedInstrument armed, Mains mains) {
    waits.heedStop();
    armed.arm();
    enter(LoopState.ARMED);
    mains.askForEvent();
    if (!armed.triggers()) {
      logNoCapture();
      return Optional.empty();
    }
    enter(LoopState.TRIGGERED);
    armed.complete();
    enter(LoopState.READING);
    Capture capture = rig.instrument().read();
    return Optional.of(logged(capture, waits.now()));
  }

  /** Nothing in here heeds a stop: a capture that was read is kept. */
  private Trial logged(Capture capture, Instant at) {
    Outcome outcome = outcomeOf(capture);
    enter(LoopState.ANALYSED);
    Trial trial =
        new Trial(
            rig.log().nextTrialNumber(), at, capture, outcome, rig.measuring().judge(outcome));
    rig.log().append(trial);
    enter(LoopState.LOGGED);
    face.trialLogged(trial);
    return trial;
  }

  private Outcome outcomeOf(Capture capture) {
    try {
      return rig.measuring().measure(capture);
    } catch (RuntimeException e) {
      LOG.error("the measurement failed on a capture, which is logged as refused", e);
      return new Refused(
          "the measurement itself failed ("
              + e.getMessage()
              + "), a fault of the program; the raw capture is kept for a recheck");
    }
  }

  private void logNoCapture() {
    rig.instrument().disarm();
    String sentence =
        "no trigger came within "
            + Sentences.of(plan.pace().triggerWait())
            + ": was the mains switch moved, and does the probe see the output?"
            + (plan.task().event() == Event.RESTORATION
                ? " A unit may check the mains for minutes before it goes back to it."
                : "")
            + (plan.capture().blindness().isAny()
                ? " The event may also have fallen where this plan is blind."
                : "");
    append(Remark.Kind.NO_CAPTURE, sentence);
    face.noted(sentence);
  }

  private void recover(Mains mains) {
    waits.heedStop();
    rig.instrument().disarm();
    if (state != LoopState.RECOVERING) {
      enter(LoopState.RECOVERING);
    }
    logDeeds();
    mains.bringBack();
  }

  /** What was asked of a commanded switch, by whichever thread, is evidence too. */
  private void logDeeds() {
    for (SwitchDeed deed : rig.mains().takeDeeds()) {
      String unused =
          rig.log().append(new Remark(deed.at(), Remark.Kind.MAINS_SWITCH, deed.sentence()));
    }
  }

  private void logAdditions() {
    logAdditions(additions.take());
  }

  /** One that does not fit is no fault of the series; a log that fails takes none of the rest. */
  private void logAdditions(List<Addition> given) {
    for (int i = 0; i < given.size(); i++) {
      try {
        log(given.get(i));
      } catch (SessionException e) {
        refuse(given.subList(i, given.size()), Sentences.of(e));
        throw e;
      }
    }
  }

  private void log(Addition addition) {
    Optional<String> whyNot = addition.whyNot(rig.log());
    if (whyNot.isPresent()) {
      face.notAdded(addition, whyNot.get());
      return;
    }
    String unused = addition.appendTo(rig.log(), waits.now());
    face.added(addition);
  }

  private void refuse(List<Addition> given, String why) {
    given.forEach(addition -> face.notAdded(addition, why));
  }

  private String repeatsSpent(Optional<Trial> last) {
    return "gave up after "
        + repeated
        + " attempts without a measurement ("
        + Sentences.measured(measured)
        + "); the last: "
        + last.map(trial -> trial.outcome().sentence()).orElse("no trigger came");
  }

  private LoopEnd end(Reason reason, String sentence) {
    return new LoopEnd(reason, measured, sentence);
  }

  /** A mains that may still be on matters more than why the series ended. */
  private LoopEnd faulted(Reason reason, RuntimeException fault) {
    boolean mainsMayBeOn =
        fault instanceof MainsSwitchException
            || Stream.of(fault.getSuppressed()).anyMatch(MainsSwitchException.class::isInstance);
    return end(mainsMayBeOn ? Reason.MAINS_SWITCH : reason, Sentences.of(fault));
  }

  private LoopEnd finish(LoopEnd end) {
    LoopEnd kept = end;
    List<Addition> last = additions.takeLast();
    if (end.reason() == Reason.SESSION) {
      refuse(last, end.sentence());
    } else {
      try {
        logAdditions(last);
        logDeeds();
        append(end.reason().remark(), end.sentence());
      } catch (SessionException e) {
        kept = end(Reason.SESSION, end.sentence() + "; and then: " + Sentences.of(e));
      }
    }
    enter(kept.state());
    return kept;
  }

  private void append(Remark.Kind kind, String sentence) {
    String unused = rig.log().append(new Remark(waits.now(), kind, sentence));
  }

  /** The only place that changes the state. */
  private void enter(LoopState next) {
    boolean allowed = state == null ? next == LoopState.PREFLIGHT : state.mayLeadTo(next);
    if (!allowed) {
      throw new IllegalStateException(state + " does not lead to " + next);
    }
    LOG.info("{}: {}", next, next.truth());
    state = next;
    face.entered(next);
  }
}
