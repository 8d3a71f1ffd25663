package mainsgap.desk;

import java.util.List;
import mainsgap.desk.findings.FindingsModel;
import mainsgap.desk.findings.FindingsPage;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;

/** The three pages, and what each tells the next. */
final class Pages {
  private Pages() {}

  /** Rig, trials and findings, in this order. */
  static List<Page> of(DeskTools tools) {
    FindingsModel findings = new FindingsModel(tools);
    return List.of(new FindingsPage(tools, findings));
  }
}
