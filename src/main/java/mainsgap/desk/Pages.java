package mainsgap.desk;

import java.util.List;
import java.util.function.IntConsumer;
import mainsgap.desk.findings.FindingsModel;
import mainsgap.desk.findings.FindingsPage;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;
import mainsgap.desk.rig.RigModel;
import mainsgap.desk.rig.RigPage;
import mainsgap.desk.trials.Doors;
import mainsgap.desk.trials.TrialsModel;
import mainsgap.desk.trials.TrialsPage;

/** The three pages, and what each tells the next. */
final class Pages {
  private static final int RIG = 0;
  private static final int TRIALS = 1;
  private static final int FINDINGS = 2;

  private Pages() {}

  /** Rig, trials and findings, in this order; {@code open} brings one of them to the front. */
  static List<Page> of(DeskTools tools, IntConsumer open) {
    RigModel rig = new RigModel(tools);
    FindingsModel findings = new FindingsModel(tools);
    TrialsModel trials =
        new TrialsModel(
            rig.source(),
            tools,
            new Doors(
                session -> {
                  findings.open(session);
                  open.accept(FINDINGS);
                },
                () -> open.accept(RIG)));
    trials.runningProperty().addListener((property, was, is) -> rig.seriesRuns(is));
    findings.seriesRunsProperty().bind(trials.runningProperty());
    return List.of(
        new RigPage(tools, rig, () -> open.accept(TRIALS)),
        new TrialsPage(trials),
        new FindingsPage(tools, findings));
  }
}
