package mainsgap.desk.findings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import mainsgap.bench.DataFolder;
import mainsgap.desk.manners.Background;
import mainsgap.desk.manners.DeskTools;
import org.jspecify.annotations.Nullable;

/**
 * Which sessions are open, and what is shown of them. Sessions and figures are read and drawn
 * beside the UI thread, on which this is used.
 */
public final class FindingsModel {
  private final Background background;
  private final BooleanProperty seriesRuns = new SimpleBooleanProperty(this, "seriesRuns");
  private final OpenMemory memory;
  private final Shelf shelf;
  private final Offers offers;
  private final Easel easel;
  private final Export export;
  private final ReadOnlyObjectWrapper<FigureWishes> wishes =
      new ReadOnlyObjectWrapper<>(FigureWishes.USUAL);
  private final Captures captures = new Captures();
  private final TraceChoice traces = new TraceChoice();
  private final ObservableList<TrialRow> rows = FXCollections.observableArrayList();
  private final ObservableList<TrialRow> shownRows = FXCollections.unmodifiableObservableList(rows);
  private final OpenedTrial trial;
  private boolean isReopened;

  /** Nothing is open yet; what was is opened again by {@link #look}. */
  public FindingsModel(DeskTools tools) {
    this(tools, DataFolder.ofUser());
  }

  FindingsModel(DeskTools tools, Path dataFolder) {
    background = tools.background();
    memory = new OpenMemory(tools.memory());
    shelf = new Shelf(tools.background());
    offers = new Offers(dataFolder, memory, tools.background());
    export = new Export(tools.background(), tools.memory(), captures);
    trial = new OpenedTrial(tools.background());
    easel = new Easel(tools.background(), tools.appearance(), captures);
    shelf.sessions().addListener((ListChangeListener<OpenedSession>) change -> showTrials());
    traces.chosenProperty().addListener((property, was, is) -> redraw());
    wishes.addListener((property, was, is) -> redraw());
  }

  /**
   * Whether a series runs: no chooser of the system may stand over the window then, as no key
   * reaches what is behind it.
   */
  public BooleanProperty seriesRunsProperty() {
    return seriesRuns;
  }

  /** Opens a session and brings it to the front. */
  public void open(Path sessionFile) {
    reopen();
    shelf.open(sessionFile);
    memory.keepRecent(sessionFile.toAbsolutePath().normalize());
    shelfChanged();
  }

  /** Opens sessions, and those in folders; the last one comes to the front. */
  void openAll(List<Path> filesAndFolders) {
    background.run(
        () -> filesOf(filesAndFolders),
        files -> files.forEach(this::open),
        unreadable -> filesAndFolders.forEach(this::open));
  }

  /** A folder without sessions stays, so that it is told why it is none. */
  private static List<Path> filesOf(List<Path> filesAndFolders) {
    List<Path> files = new ArrayList<>();
    for (Path one : filesAndFolders) {
      List<Path> within = DataFolder.sessionsIn(one);
      files.addAll(within.isEmpty() ? List.of(one) : within);
    }
    return files;
  }

  /** Takes a session, or a file that could not be read, off the page. */
  void remove(Path file) {
    shelf.remove(file);
    shelfChanged();
  }

  /** The page is looked at: what was open is opened again, and what could be is offered. */
  void look() {
    reopen();
    shelf.refresh();
    shelfChanged();
  }

  private void reopen() {
    if (!isReopened) {
      isReopened = true;
      memory.open().forEach(shelf::read);
    }
  }

  Shelf shelf() {
    return shelf;
  }

  Offers offers() {
    return offers;
  }

  /** The trial that is opened again, in the place of the figure. */
  OpenedTrial trial() {
    return trial;
  }

  /** What is on the screen, to be written; null where nothing is. */
  @Nullable FigureOrder onScreen() {
    TrialRow opened = trial.trialProperty().get();
    return opened == null ? easel.order() : FigureOrder.of(opened, wishes.get());
  }

  Export export() {
    return export;
  }

  Easel easel() {
    return easel;
  }

  ReadOnlyObjectProperty<FigureWishes> wishesProperty() {
    return wishes.getReadOnlyProperty();
  }

  void wish(FigureWishes wanted) {
    trial.close();
    wishes.set(wanted);
  }

  private void shelfChanged() {
    memory.keepOpen(shelf.asked());
    offers.look(shelf.asked());
  }

  /** The trials of the sessions shown, in their order. */
  ObservableList<TrialRow> rows() {
    return shownRows;
  }

  /** Which of them are laid over each other. */
  TraceChoice traces() {
    return traces;
  }

  private List<OpenedSession> shown() {
    return shelf.sessions().stream().filter(OpenedSession::isShown).toList();
  }

  private void showTrials() {
    TrialRow opened = trial.trialProperty().get();
    if (opened != null
        && shown().stream().noneMatch(one -> one.file().equals(opened.key().file()))) {
      trial.close();
    }
    rows.setAll(TrialRow.of(shown()));
    traces.among(List.copyOf(rows));
    redraw();
  }

  private void redraw() {
    List<OpenedSession> shown = shown();
    easel.show(
        shown.isEmpty()
            ? null
            : new FigureOrder(
                shown, List.copyOf(rows), traces.chosenProperty().get(), wishes.get()));
  }
}
