package mainsgap.desk.rig;

import java.nio.file.Path;
import java.util.Random;
import mainsgap.bench.CatchWish;
import mainsgap.bench.InstrumentChoice;
import mainsgap.bench.RigSheet;
import mainsgap.bench.SeriesPlan;
import mainsgap.bench.SeriesRequest;
import mainsgap.bench.SessionPlace;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DecisionRule;

/** What is asked of the bench, by the rig as it is set. */
final class RigRequests {
  private static final int HIGHEST_SEED = 1_000_000;

  private final RigFields fields;
  private final RigShelf shelf;
  private final RigKeeper keeper;
  private final CautionTicks cautions;

  RigRequests(RigFields fields, RigShelf shelf, RigKeeper keeper, CautionTicks cautions) {
    this.fields = fields;
    this.shelf = shelf;
    this.keeper = keeper;
    this.cautions = cautions;
  }

  /** Whether the rig can only run from the folder of its saved file. */
  boolean needsItsOwnFolder() {
    return fields.kept().namesAnotherFile()
        && (shelf.unsavedProperty().get() || shelf.fileProperty().get() == null);
  }

  /**
   * The series of the rig; a check looks at the same.
   *
   * @throws mainsgap.bench.BenchException if its file cannot be written
   */
  SeriesRequest request() {
    return request(file());
  }

  private Path file() {
    Path own = shelf.fileProperty().get();
    return own != null && fields.kept().namesAnotherFile() ? own : keeper.fileInUse();
  }

  private SeriesRequest request(Path rigFile) {
    RigSheet sheet = fields.sheet();
    InstrumentChoice choice = sheet.instrument().choice(new Random().nextInt(HIGHEST_SEED));
    if (choice == null) {
      throw new IllegalStateException("the rig names neither an instrument nor a simulated unit");
    }
    Integer trials = sheet.wish().trials();
    return new SeriesRequest(
        choice,
        null,
        sheet.claim(),
        DecisionRule.GUARDED,
        fields.mainsSwitch.event.valueOr(Event.LOSS),
        null,
        null,
        trials == null ? SwitchFields.USUAL_TRIALS : trials,
        SessionPlace.NEW_IN_DATA_FOLDER,
        rigFile,
        cautions.areRead(),
        fields.mainsSwitch.catching.valueOr(CatchWish.AUTOMATIC),
        SeriesPlan.NONE,
        null,
        null,
        null);
  }
}
