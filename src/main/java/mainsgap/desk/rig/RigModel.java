package mainsgap.desk.rig;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.bench.BenchException;
import mainsgap.bench.Cautions;
import mainsgap.bench.RigCheckEnd;
import mainsgap.bench.SeriesRequest;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.SeriesSource;

/** The rig as it is set, and whether a series can run on it. For the UI thread. */
public final class RigModel {
  private final RigFields fields = new RigFields();
  private final RigRules rules = new RigRules(fields);
  private final PartWords words = new PartWords(fields, rules);
  private final CautionTicks cautions = new CautionTicks();
  private final RigChecking checking;
  private final InstrumentSearch search;
  private final RigShelf shelf;
  private final RigKeeper keeper;
  private final RigRequests requests;
  private final Map<Part, ReadOnlyObjectWrapper<PartState>> states = new EnumMap<>(Part.class);
  private final ReadOnlyStringWrapper whyNotReady =
      new ReadOnlyStringWrapper(this, "whyNotReady", "");
  private final ReadOnlyStringWrapper whyNoCheck =
      new ReadOnlyStringWrapper(this, "whyNoCheck", "");
  private final ReadOnlyBooleanWrapper locked = new ReadOnlyBooleanWrapper(this, "locked");
  private boolean wasReal;

  /** The rig as it was left, or the example. */
  public RigModel(DeskTools tools) {
    checking = new RigChecking(tools);
    search = new InstrumentSearch(tools);
    keeper = new RigKeeper(tools.background(), tools.memory().folder());
    shelf = new RigShelf(fields, tools);
    requests = new RigRequests(fields, shelf, keeper, cautions);
    for (Part part : Part.values()) {
      states.put(part, new ReadOnlyObjectWrapper<>(this, part.id(), PartState.NOTHING));
    }
    shelf.reopen(keeper.draft());
    wasReal = fields.scope.isReal();
    fields
        .scope
        .runs
        .valueProperty()
        .addListener(
            (property, was, is) -> {
              if (is == ScopeFields.Runs.INSTRUMENT && !fields.isShowing()) {
                ExampleRig.forgetInvented(fields);
              }
            });
    fields.whenChanged(this::changed);
    cautions.leftProperty().addListener((property, was, is) -> judge());
    checking.runningProperty().addListener((property, was, is) -> judge());
    checking.endProperty().addListener((property, was, is) -> judge());
    keeper.complaintProperty().addListener((property, was, is) -> judge());
    shelf.fileProperty().addListener((property, was, is) -> judge());
    shelf.unsavedProperty().addListener((property, was, is) -> judge());
    changed();
  }

  /** Where a series comes from. */
  public SeriesSource source() {
    return new SeriesSource() {
      @Override
      public ReadOnlyStringProperty whyNotReady() {
        return whyNotReady.getReadOnlyProperty();
      }

      @Override
      public SeriesRequest request() {
        return requestForSeries();
      }
    };
  }

  /** A series begins or has ended: while it runs, nothing can be changed. */
  public void seriesRuns(boolean runs) {
    if (runs) {
      checking.stop();
      search.stop();
    }
    locked.set(runs);
    judge();
  }

  /** Stops what runs, and keeps what is not kept yet. */
  void close() {
    checking.stop();
    search.stop();
    try {
      keeper.writeNow();
    } catch (BenchException e) {
      shelf.refuse(String.valueOf(e.getMessage()));
    }
  }

  RigFields fields() {
    return fields;
  }

  CautionTicks cautions() {
    return cautions;
  }

  RigChecking checking() {
    return checking;
  }

  InstrumentSearch search() {
    return search;
  }

  RigShelf shelf() {
    return shelf;
  }

  /** What is shown in place at {@code part}. */
  ReadOnlyObjectProperty<PartState> stateOf(Part part) {
    return Objects.requireNonNull(states.get(part)).getReadOnlyProperty();
  }

  /** Whether a series runs, so that nothing can be changed. */
  ReadOnlyBooleanProperty lockedProperty() {
    return locked.getReadOnlyProperty();
  }

  /** Why the rig cannot be checked now; empty where it can. */
  ReadOnlyStringProperty whyNoCheckProperty() {
    return whyNoCheck.getReadOnlyProperty();
  }

  /** Looks at a few cycles of the live signal. */
  void check() {
    check(false);
  }

  /** Looks at them again and again, until it is stopped. */
  void keepLooking() {
    check(true);
  }

  private void check(boolean again) {
    judge();
    if (whyNoCheck.get().isEmpty()) {
      try {
        checking.start(requests.request(), again);
      } catch (BenchException e) {
        whyNoCheck.set(String.valueOf(e.getMessage()));
      }
    }
  }

  /** Saves to the open file; false where there is none yet, or something cannot be saved. */
  boolean save() {
    Path file = shelf.fileProperty().get();
    return file != null && saveAs(file);
  }

  /** Saves to {@code file}; false where something cannot be saved. */
  boolean saveAs(Path file) {
    List<String> wrong = rules.complaintsAboutText();
    if (!wrong.isEmpty()) {
      shelf.refuse("not saved, as a rig file cannot hold it: " + wrong.get(0));
      return false;
    }
    shelf.save(file);
    return true;
  }

  private SeriesRequest requestForSeries() {
    judge();
    if (whyNotReady.get().isEmpty()) {
      try {
        return requests.request();
      } catch (BenchException e) {
        whyNotReady.set(String.valueOf(e.getMessage()));
      }
    }
    throw new IllegalStateException(whyNotReady.get());
  }

  private void changed() {
    if (fields.scope.isReal() && !wasReal) {
      wasReal = true;
      cautions.forget();
    }
    wasReal = fields.scope.isReal();
    rules.apply();
    cautions.hold(Cautions.of(fields.kept().isSwitchCommanded()));
    checking.rigChanged();
    shelf.fieldsChanged();
    keeper.keep(
        new RigKeeper.Kept(
            shelf.unsavedProperty().get() ? RigSnapshot.of(fields) : null,
            rules.complaints().isEmpty() ? fields.sheet() : null));
    judge();
  }

  private void judge() {
    whyNoCheck.set(whyNoCheck());
    whyNotReady.set(whyNotReady());
    RigCheckEnd end = checking.outdatedProperty().get() ? null : checking.endProperty().get();
    RigCheckEnd.Seen seen = end == null ? null : end.seen();
    states.forEach((part, state) -> state.set(words.of(part, seen)));
  }

  private String whyNoCheck() {
    if (locked.get()) {
      return "a series runs on this rig: let it end, or stop it";
    }
    String wrong = whyNotSet();
    return wrong.isEmpty() && fields.scope.isReal() ? whyNotCautious() : wrong;
  }

  private String whyNotReady() {
    String wrong = whyNotSet();
    if (wrong.isEmpty()) {
      wrong = whyNotCautious();
    }
    return wrong.isEmpty() && checking.isRunning()
        ? "the rig is being checked: wait for the end, or stop the check"
        : wrong;
  }

  private String whyNotSet() {
    List<String> wrong = rules.complaints();
    if (!wrong.isEmpty()) {
      return wrong.get(0);
    }
    if (requests.needsItsOwnFolder()) {
      return "save the rig first: its mains switch names a file that lies beside the rig file";
    }
    return keeper.complaintProperty().get();
  }

  private String whyNotCautious() {
    int left = cautions.leftProperty().get();
    int all = cautions.list().size();
    return left == 0
        ? ""
        : "read the cautions and tick each: "
            + (left == all ? "none of the " + all : (all - left) + " of " + all)
            + " is ticked".replace("is", all - left > 1 ? "are" : "is");
  }
}
