package mainsgap.desk.trials;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import mainsgap.arming.Progress;
import mainsgap.bench.RunningFigures;
import mainsgap.bench.SeriesEnd;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.SessionPlace;
import mainsgap.bench.TrialReport;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.SeriesSource;
import mainsgap.session.Addition;
import mainsgap.signal.Capture;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What can be done about a series: its {@link Course} is told and its {@link TrialBook} is filled
 * as it runs. For the UI thread.
 */
public final class TrialsModel {
  private static final Logger LOG = LoggerFactory.getLogger(TrialsModel.class);

  /** As long as the command line waits when it is stopped. */
  private static final Duration LONGEST_SHUT_DOWN = Duration.ofSeconds(15);

  private final SeriesSource source;
  private final DeskTools tools;
  private final Doors doors;
  private final Executor seriesThread;
  private final SeriesEars ears;
  private final Course course;
  private final TrialBook book = new TrialBook();
  private final Keeping keeping;
  private final SessionFolder folder;
  private final ReadOnlyStringWrapper complaint = new ReadOnlyStringWrapper("");
  private final ObservableList<WayOn> waysOn = FXCollections.observableArrayList();
  private final ObservableList<WayOn> shownWaysOn =
      FXCollections.unmodifiableObservableList(waysOn);

  /** Read by the thread that ends the program, too. */
  private volatile @Nullable RunningSeries series;

  private @Nullable Path asked;
  private @Nullable SeriesEnd end;

  /** A page on which nothing has run yet. */
  public TrialsModel(SeriesSource source, DeskTools tools, Doors doors) {
    this(source, tools, doors, RunningSeries::onAThreadOfItsOwn);
  }

  TrialsModel(SeriesSource source, DeskTools tools, Doors doors, Executor seriesThread) {
    this.source = source;
    this.tools = tools;
    this.doors = doors;
    this.seriesThread = seriesThread;
    this.ears = new SeriesEars(this, tools.ui());
    this.course = new Course(tools.sounds(), source.whyNotReady().get());
    this.folder = new SessionFolder(tools.memory());
    this.keeping = new Keeping(tools, book, course, this::notAdded);
    source.whyNotReady().addListener((property, was, is) -> course.idle(is));
  }

  /** Whether a series runs. */
  public ReadOnlyBooleanProperty runningProperty() {
    return course.runningProperty();
  }

  /** What is told while a series runs. */
  Course course() {
    return course;
  }

  /** What has been measured. */
  TrialBook book() {
    return book;
  }

  /** Why what was last asked was not done; empty where it was. */
  ReadOnlyStringProperty complaintProperty() {
    return complaint.getReadOnlyProperty();
  }

  /** Where new sessions are made. */
  SessionFolder folder() {
    return folder;
  }

  /** What can be done now that the series has ended. */
  ObservableList<WayOn> waysOn() {
    return shownWaysOn;
  }

  /** Why no series can start; empty where one can. */
  ReadOnlyStringProperty whyNotReadyProperty() {
    return source.whyNotReady();
  }

  private boolean isRunning() {
    return course.runningProperty().get();
  }

  /** Starts the series that the rig asks for. */
  void start() {
    if (mayStart()) {
      SeriesRequest request = folder.placed(source.request());
      begin(request, request.trials());
    }
  }

  /** Makes new sessions in {@code chosen} from now on, and starts one. */
  void startIn(Path chosen) {
    folder.choose(chosen);
    start();
  }

  /** Goes on with the session, with the trials that it still lacks, or as many again. */
  void continueSession() {
    Path session = end == null || end.session() == null ? asked : end.session();
    if (session != null && mayStart()) {
      SeriesRequest request = source.request();
      int counted = (int) book.trials().stream().filter(TrialReport::counts).count();
      int lacking = request.trials() - counted;
      int more = lacking > 0 ? lacking : request.trials();
      begin(request.loggedTo(SessionPlace.goingOn(session), more), counted + more);
      asked = session;
    }
  }

  private boolean mayStart() {
    if (isRunning()) {
      return false;
    }
    if (keeping.isWriting()) {
      complaint.set("The session is being written to: start once it is done");
      return false;
    }
    String why = source.whyNotReady().get();
    complaint.set(why);
    return why.isEmpty();
  }

  private void begin(SeriesRequest request, int wantedInAll) {
    end = null;
    asked = null;
    waysOn.clear();
    keeping.forget();
    book.begins(wantedInAll);
    complaint.set("");
    course.begins();
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
    if (isRunning() && now != null) {
      now.stop();
      course.stopAskedFor();
    }
  }

  /** Takes mains off where the program can, and says loudly where it cannot. */
  void emergencyOff() {
    RunningSeries now = series;
    if (isRunning() && now != null) {
      now.stop();
      course.emergencyAskedFor();
    }
  }

  /** Ends a settling time that goes on. */
  void goOn() {
    RunningSeries now = series;
    Progress going = course.waitProperty().get();
    if (now != null && going != null && going.canBeCutShort()) {
      now.proceed();
    }
  }

  /** Gives the word that is asked for. */
  void letMainsClose() {
    RunningSeries now = series;
    if (now != null && course.wordAskedProperty().get()) {
      course.wordGiven();
      now.letMainsClose();
    }
  }

  /** Adds to the session, while the series runs or after it. */
  void add(Addition addition) {
    complaint.set("");
    RunningSeries now = series;
    if (isRunning() && now != null && now.add(addition)) {
      return;
    }
    keeping.add(addition);
    if (!isRunning()) {
      keeping.write();
    }
  }

  void openInFindings() {
    Path file = keeping.file();
    if (file != null && !isRunning()) {
      doors.findings().accept(file);
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
    if (makeSafe()) {
      keeping.writeNow();
    }
  }

  /**
   * The process is being ended: the same, as far as another thread may go; false where the series
   * did not end in time.
   */
  boolean makeSafe() {
    RunningSeries now = series;
    boolean over = now == null || now.stopWithin(LONGEST_SHUT_DOWN, tools.clock());
    if (!over) {
      LOG.warn("the series did not end within {}; what was logged stays", LONGEST_SHUT_DOWN);
    }
    return over;
  }

  void trialFinished(TrialReport trial, RunningFigures counted) {
    book.trialFinished(trial, counted);
    course.trialFinished(trial);
  }

  /** Only the last capture is kept. */
  void trialCaptured(TrialReport trial, Capture capture) {
    MeasuringTask measured = book.task();
    DeclaredClaim claim = book.claimProperty().get();
    if (measured != null) {
      tools
          .background()
          .run(
              () -> DrawnTrial.of(trial, capture, measured, claim),
              book::drawn,
              e -> complaint.set("The last trace could not be drawn: " + e.getMessage()));
    }
  }

  void added(@Nullable TrialReport trial, RunningFigures counted) {
    book.added(trial, counted);
    course.noted(
        trial == null ? "the note is in the session" : "trial " + trial.number() + " is noted");
  }

  void notAdded(String why) {
    complaint.set(TrialWords.capital(why));
  }

  private void ended(SeriesEnd ending) {
    end = ending;
    book.ended(ending);
    course.ended(ending);
    waysOn.setAll(WayOn.after(ending, asked != null));
    keeping.ended(ending);
  }

  private void broken(RuntimeException fault) {
    course.broken(fault);
    waysOn.setAll(WayOn.START_AGAIN, WayOn.BACK_TO_RIG);
    keeping.write();
  }
}
