package mainsgap.desk.trials;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import mainsgap.arming.LoopState;
import mainsgap.arming.Progress;
import mainsgap.arming.Prompt;
import mainsgap.arming.SwitchMove;
import mainsgap.bench.KeptSession;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.SessionPlace;
import mainsgap.bench.TrialReport;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.SeriesSource;
import mainsgap.desk.sound.SoundWord;
import mainsgap.session.Addition;
import mainsgap.signal.Capture;
import mainsgap.transfer.DeclaredClaim;
import mainsgap.transfer.MeasuringTask;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A series as the page shows it, and what can be done about it. For the UI thread. */
public final class TrialsModel {
  private static final Logger LOG = LoggerFactory.getLogger(TrialsModel.class);

  /** As long as the command line waits when it is stopped. */
  private static final Duration LONGEST_SHUT_DOWN = Duration.ofSeconds(15);

  private static final String COMMANDED = "Hands off: the program opens the mains switch.";

  private final SeriesSource source;
  private final DeskTools tools;
  private final Doors doors;
  private final Executor seriesThread;
  private final SeriesEars ears;

  private final ReadOnlyObjectWrapper<Sign> sign;
  private final ReadOnlyObjectWrapper<@Nullable Progress> wait = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper stopping = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper commanded = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper wordAsked = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<@Nullable TrialReport> last = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable DrawnTrial> drawn = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<RunningFigures> figures =
      new ReadOnlyObjectWrapper<>(RunningFigures.NONE);
  private final ReadOnlyObjectWrapper<@Nullable DeclaredClaim> claim =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Evidence> evidence = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper title = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper note = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper complaint = new ReadOnlyStringWrapper("");
  private final ObservableList<TrialReport> trials = FXCollections.observableArrayList();
  private final ObservableList<WayOn> waysOn = FXCollections.observableArrayList();

  private final Queue<Addition> waiting = new ArrayDeque<>();
  private boolean adding;
  private boolean emergency;
  private @Nullable RunningSeries series;
  private @Nullable SeriesEnd end;
  private @Nullable LoopState state;
  private @Nullable MeasuringTask task;

  /** A page on which nothing has run yet. */
  public TrialsModel(SeriesSource source, DeskTools tools, Doors doors) {
    this(source, tools, doors, TrialsModel::onAThreadOfItsOwn);
  }

  TrialsModel(SeriesSource source, DeskTools tools, Doors doors, Executor seriesThread) {
    this.source = source;
    this.tools = tools;
    this.doors = doors;
    this.seriesThread = seriesThread;
    this.ears = new SeriesEars(this, tools.ui());
    this.sign = new ReadOnlyObjectWrapper<>(idleSign());
    source
        .whyNotReady()
        .addListener(
            (property, was, is) -> {
              if (!running.get() && end == null) {
                sign.set(idleSign());
              }
            });
  }

  private static void onAThreadOfItsOwn(Runnable work) {
    Thread thread = new Thread(work, "series");
    thread.setDaemon(true);
    thread.start();
  }

  ReadOnlyObjectProperty<Sign> signProperty() {
    return sign.getReadOnlyProperty();
  }

  /** The wait that goes on; null where there is none. */
  ReadOnlyObjectProperty<@Nullable Progress> waitProperty() {
    return wait.getReadOnlyProperty();
  }

  /** Whether a series runs. */
  public ReadOnlyBooleanProperty runningProperty() {
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

  ReadOnlyObjectProperty<@Nullable TrialReport> lastProperty() {
    return last.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable DrawnTrial> drawnProperty() {
    return drawn.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<RunningFigures> figuresProperty() {
    return figures.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable DeclaredClaim> claimProperty() {
    return claim.getReadOnlyProperty();
  }

  /** Where the series is kept; null before its session is open. */
  ReadOnlyObjectProperty<@Nullable Evidence> evidenceProperty() {
    return evidence.getReadOnlyProperty();
  }

  /** The unit and what is declared of it. */
  ReadOnlyStringProperty titleProperty() {
    return title.getReadOnlyProperty();
  }

  /** What was last said that the user should read. */
  ReadOnlyStringProperty noteProperty() {
    return note.getReadOnlyProperty();
  }

  /** Why what was last added was not taken; empty where it was. */
  ReadOnlyStringProperty complaintProperty() {
    return complaint.getReadOnlyProperty();
  }

  /** All trials of the session, refused and set-aside ones too. */
  ObservableList<TrialReport> trials() {
    return FXCollections.unmodifiableObservableList(trials);
  }

  /** What can be done now that the series has ended. */
  ObservableList<WayOn> waysOn() {
    return FXCollections.unmodifiableObservableList(waysOn);
  }

  ReadOnlyStringProperty whyNotReadyProperty() {
    return source.whyNotReady();
  }

  /** Starts the series that the rig asks for. */
  void start() {
    if (mayStart()) {
      begin(source.request());
    }
  }

  /** Starts it in a new session in {@code folder}. */
  void startIn(Path folder) {
    if (mayStart()) {
      SeriesRequest request = source.request();
      begin(request.loggedTo(SessionPlace.newIn(folder), request.trials()));
    }
  }

  /** Goes on with the session, with the trials that it still lacks, or as many again. */
  void continueSession() {
    SeriesEnd before = end;
    if (!mayStart() || before == null || before.session() == null) {
      return;
    }
    SeriesRequest request = source.request();
    long counted = before.trials().stream().filter(TrialReport::counts).count();
    int lacking = (int) (request.trials() - counted);
    begin(
        request.loggedTo(
            SessionPlace.goingOn(before.session()), lacking > 0 ? lacking : request.trials()));
  }

  private boolean mayStart() {
    return !running.get() && !adding && source.whyNotReady().get().isEmpty();
  }

  private void begin(SeriesRequest request) {
    end = null;
    state = null;
    task = null;
    emergency = false;
    trials.clear();
    waysOn.clear();
    waiting.clear();
    last.set(null);
    drawn.set(null);
    figures.set(RunningFigures.NONE);
    evidence.set(null);
    wait.set(null);
    note.set("");
    complaint.set("");
    commanded.set(false);
    wordAsked.set(false);
    stopping.set(false);
    running.set(true);
    sign.set(new Sign(Sign.Kind.CONNECTING, "The instrument is being reached."));
    RunningSeries begun = new RunningSeries(request);
    series = begun;
    begun.runOn(
        seriesThread,
        ears,
        ended -> tools.ui().run(() -> ended(ended)),
        broken -> tools.ui().run(() -> broken(broken)));
  }

  /** Ends the series; what was read is logged. A commanded switch opens. */
  void stop() {
    RunningSeries now = series;
    if (running.get() && now != null) {
      now.stop();
      stopping.set(true);
      wordAsked.set(false);
      sign.set(
          new Sign(
              Sign.Kind.STOPPING,
              commanded.get()
                  ? "The mains switch opens, the instrument is disarmed."
                  : "The instrument is disarmed; the mains switch stays as your hand left it."));
    }
  }

  /** Takes mains off where the program can, and says loudly where it cannot. */
  void emergencyOff() {
    if (running.get()) {
      stop();
      emergency = true;
      if (!commanded.get()) {
        sign.set(
            new Sign(
                Sign.Kind.OPEN_SWITCH,
                "Emergency: no program moves this switch. Open it by hand, now."));
      }
    }
  }

  /** Ends a settling time that goes on. */
  void goOn() {
    RunningSeries now = series;
    Progress going = wait.get();
    if (now != null && going != null && going.canBeCutShort()) {
      now.proceed();
    }
  }

  /** Gives the word that is asked for. */
  void letMainsClose() {
    RunningSeries now = series;
    if (now != null && wordAsked.get()) {
      wordAsked.set(false);
      now.letMainsClose();
      sign.set(new Sign(Sign.Kind.SETTLING, "Hands off: the program closes the mains switch."));
    }
  }

  /** Adds to the session, while the series runs or after it. */
  void add(Addition addition) {
    complaint.set("");
    RunningSeries now = series;
    boolean taken = running.get() && now != null && now.add(addition);
    if (!taken) {
      waiting.add(addition);
      addWhatWaits();
    }
  }

  void openInFindings() {
    Evidence kept = evidence.get();
    if (kept != null && !running.get()) {
      doors.findings().accept(kept.file());
    }
  }

  void goToRig() {
    doors.rig().run();
  }

  /**
   * Stops what runs and waits, at most 15 s, until the instrument is safe and all is in the
   * session.
   */
  public void shutDown() {
    RunningSeries now = series;
    if (now != null && !now.stopWithin(LONGEST_SHUT_DOWN, tools.clock())) {
      LOG.warn("the series did not end within {}; what was logged stays", LONGEST_SHUT_DOWN);
      return;
    }
    Evidence kept = evidence.get();
    while (kept != null && !waiting.isEmpty()) {
      addAtTheEnd(kept.file(), waiting.remove());
    }
  }

  private void addAtTheEnd(Path file, Addition addition) {
    try {
      KeptSession unused = KeptSession.add(file, addition, tools.clock().instant());
    } catch (RuntimeException e) {
      LOG.warn("{} could not be added to {}", addition, file, e);
    }
  }

  private Sign idleSign() {
    String why = source.whyNotReady().get();
    return why.isEmpty()
        ? new Sign(Sign.Kind.READY, "Start the series once everybody stands clear.")
        : new Sign(Sign.Kind.NOT_READY, why);
  }

  void measures(String unit, MeasuringTask measured, @Nullable DeclaredClaim declared) {
    task = measured;
    claim.set(declared);
    title.set(
        unit
            + " · "
            + (declared == null ? "no declared time" : "declared " + declared.asPrinted()));
  }

  void connected(String instrument) {
    note.set(instrument);
  }

  void sessionOpened(Path file) {
    evidence.set(new Evidence(file, null));
  }

  void planned(List<String> explanation) {
    if (!explanation.isEmpty()) {
      note.set(explanation.get(0));
    }
  }

  void switchCommanded(String words) {
    commanded.set(true);
    note.set(TrialWords.capital(words));
  }

  void entered(LoopState next) {
    LoopState before = state;
    state = next;
    wait.set(null);
    wordAsked.set(false);
    switch (next) {
      case PREFLIGHT -> say(Sign.Kind.CHECKING, "Hands off the rig: its live signal is looked at.");
      case ARMED -> {
        say(Sign.Kind.ARMED, commanded.get() ? COMMANDED : "The instrument watches.");
        tools.sounds().say(SoundWord.ARMED);
      }
      case TRIGGERED -> {
        say(Sign.Kind.CAUGHT, "Leave the switch as it is: the record goes on.");
        tools.sounds().say(SoundWord.CAUGHT);
      }
      case READING -> say(Sign.Kind.READING, "Leave the switch as it is: the record is read.");
      case ANALYSED -> say(Sign.Kind.LOGGING, "Measured; the raw record goes to the disk.");
      case RECOVERING -> {
        if (before == LoopState.ARMED) {
          say(Sign.Kind.NO_TRIGGER, note.get());
          tools.sounds().say(SoundWord.FAULT);
        }
      }
      case LOGGED, COMPLETE, STOPPED, FAULTED -> {}
    }
  }

  /** Once a stop is asked for nothing is asked of the hand any more. */
  private void say(Sign.Kind kind, String toDo) {
    if (!stopping.get()) {
      sign.set(new Sign(kind, toDo));
    }
  }

  void prompted(Prompt prompt) {
    String words = TrialWords.capital(prompt.sentence()) + ".";
    if (prompt.asksForWord()) {
      wordAsked.set(!stopping.get());
      say(Sign.Kind.WORD_ASKED, words);
    } else if (state == LoopState.ARMED) {
      say(Sign.Kind.ARMED, words);
    } else if (prompt.move() == SwitchMove.CLOSE) {
      say(Sign.Kind.CLOSE_SWITCH, words);
      tools.sounds().say(SoundWord.CLOSE_THE_SWITCH);
    } else {
      say(Sign.Kind.OPEN_SWITCH, words);
    }
  }

  void progressed(Progress progress) {
    wait.set(progress);
    if (progress.canBeCutShort() && sign.get().kind() != Sign.Kind.SETTLING) {
      say(Sign.Kind.SETTLING, "Waiting for " + progress.what() + ". Enter goes on sooner.");
    }
  }

  void noted(String sentence) {
    note.set(TrialWords.capital(sentence));
  }

  void earlierTrials(List<TrialReport> earlier, RunningFigures counted) {
    trials.setAll(earlier);
    figures.set(counted);
  }

  void trialFinished(TrialReport trial, RunningFigures counted) {
    trials.add(trial);
    figures.set(counted);
    last.set(trial);
    Mark mark = Mark.of(trial);
    String reason = TrialWords.reason(trial);
    say(
        mark.sign(),
        reason.isEmpty() ? TrialWords.transfer(trial.outcome()) : TrialWords.capital(reason));
    if (mark == Mark.PASSED) {
      tools.sounds().say(SoundWord.PASSED);
    } else if (mark == Mark.FAILED) {
      tools.sounds().say(SoundWord.FAILED);
    }
  }

  /** Only the last capture is kept. */
  void trialCaptured(TrialReport trial, Capture capture) {
    MeasuringTask measured = task;
    if (measured != null) {
      tools
          .background()
          .run(
              () -> DrawnTrial.of(trial, capture, measured),
              this::draw,
              e -> complaint.set("The last trace could not be drawn: " + e.getMessage()));
    }
  }

  private void draw(DrawnTrial trial) {
    TrialReport newest = last.get();
    if (newest != null && newest.number() == trial.trial().number()) {
      drawn.set(trial);
    }
  }

  void added(Addition addition, @Nullable TrialReport trial, RunningFigures counted) {
    figures.set(counted);
    if (trial != null) {
      replace(trial);
    }
    noted(trial == null ? "the note is in the session" : "trial " + trial.number() + " is noted");
  }

  void notAdded(Addition addition, String why) {
    complaint.set(TrialWords.capital(why));
  }

  private void replace(TrialReport trial) {
    for (int i = 0; i < trials.size(); i++) {
      if (trials.get(i).number() == trial.number()) {
        trials.set(i, trial);
      }
    }
    TrialReport newest = last.get();
    if (newest != null && newest.number() == trial.number()) {
      last.set(trial);
    }
  }

  private void ended(SeriesEnd ending) {
    end = ending;
    over();
    if (ending.session() != null) {
      figures.set(ending.figures());
      evidence.set(new Evidence(ending.session(), ending.lastSeal()));
    }
    sign.set(signOf(ending));
    waysOn.setAll(WayOn.after(ending));
    if (sign.get().kind() == Sign.Kind.FAULT) {
      tools.sounds().say(SoundWord.FAULT);
    }
    addWhatWaits();
  }

  private void broken(RuntimeException fault) {
    over();
    sign.set(
        new Sign(
            Sign.Kind.FAULT,
            "The program failed ("
                + fault.getMessage()
                + "): look at the switch and the instrument; what was logged stays."));
    waysOn.setAll(WayOn.START_AGAIN, WayOn.BACK_TO_RIG);
    tools.sounds().say(SoundWord.FAULT);
  }

  private void over() {
    running.set(false);
    stopping.set(false);
    wordAsked.set(false);
    wait.set(null);
  }

  private Sign signOf(SeriesEnd ending) {
    String sentence = TrialWords.capital(ending.sentence());
    return switch (ending.kind()) {
      case COMPLETE -> new Sign(Sign.Kind.COMPLETE, sentence + ".");
      case INCOMPLETE -> new Sign(Sign.Kind.INCOMPLETE, sentence);
      case STOPPED -> new Sign(Sign.Kind.STOPPED, emergency ? afterEmergency() : afterStop());
      case NOTHING_MEASURED, WRONG_USE, INSTRUMENT_FAILED, SESSION_FAILED ->
          new Sign(Sign.Kind.FAULT, sentence);
    };
  }

  private String afterStop() {
    return commanded.get()
        ? "Stopped by you: the mains switch is open. What was logged stays."
        : "Stopped by you: the mains switch is as your hand left it. What was logged stays.";
  }

  private String afterEmergency() {
    return commanded.get()
        ? "Emergency off: the mains switch is open. The unit's output may still be live."
        : "Emergency: the instrument is disarmed. Open the mains switch by hand.";
  }

  /** One after the other: a session takes one writer. */
  private void addWhatWaits() {
    Evidence kept = evidence.get();
    Addition next = waiting.peek();
    if (running.get() || adding || kept == null || next == null) {
      return;
    }
    adding = true;
    Addition unused = waiting.remove();
    tools
        .background()
        .run(
            () -> KeptSession.add(kept.file(), next, tools.clock().instant()),
            this::addedAfterwards,
            e -> {
              adding = false;
              complaint.set(TrialWords.capital(String.valueOf(e.getMessage())));
              addWhatWaits();
            });
  }

  private void addedAfterwards(KeptSession kept) {
    adding = false;
    trials.setAll(kept.trials());
    figures.set(kept.figures());
    evidence.set(new Evidence(kept.session().file(), kept.session().lastSeal()));
    TrialReport newest = last.get();
    if (newest != null) {
      last.set(kept.trials().get(newest.number() - 1));
    }
    noted("it is in the session, under a new last seal");
    addWhatWaits();
  }
}
