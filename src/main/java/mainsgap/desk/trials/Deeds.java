package mainsgap.desk.trials;

import mainsgap.session.Addition;
import mainsgap.session.LoadFate;
import org.jspecify.annotations.Nullable;

/** What a user does about the trial that is chosen. */
final class Deeds {
  private final TrialsModel model;
  private final TrialsTable table;
  private final EntryBar entry;

  Deeds(TrialsModel model, TrialsTable table, EntryBar entry) {
    this.model = model;
    this.table = table;
    this.entry = entry;
  }

  /** Asks for the reason first: a trial is never set aside without one. */
  void setAside() {
    Integer trial = table.chosen();
    if (trial != null) {
      entry.ask(
          "Set trial " + trial + " aside because",
          "such as: the plug was loose; it stays in the session and in every report",
          reason -> model.add(new Addition.SetAside(trial, reason)));
    }
  }

  /** About the chosen trial; about the session where there is none yet. */
  void note() {
    Integer trial = table.chosen();
    entry.ask(
        trial == null ? "Note about the session" : "Note about trial " + trial,
        "such as: the fan came on",
        text -> model.add(new Addition.Note(trial, text)));
  }

  void load(LoadFate fate) {
    @Nullable Integer trial = table.chosen();
    if (trial != null) {
      model.add(new Addition.Load(trial, fate));
    }
  }
}
