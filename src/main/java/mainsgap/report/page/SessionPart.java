package mainsgap.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import mainsgap.report.Figure;
import mainsgap.report.FigureNotes;
import mainsgap.report.OverlaidTraces;
import mainsgap.report.RankBy;
import mainsgap.report.Readings;
import mainsgap.report.SeriesWords;
import mainsgap.report.TrialStrips;
import mainsgap.report.UnitSeries;
import mainsgap.session.Ending;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Verdict;

/**
 * What the page tells of one session.
 *
 * @param place its place on the page, from 1
 * @param series the session as figures show it
 * @param reported the session as it was read
 */
record SessionPart(int place, UnitSeries series, ReportedSession reported) {
  private static final int STRIP_HEIGHT_PIXELS = 330;
  private static final int TRACES_HEIGHT_PIXELS = 520;

  private Session session() {
    return reported.session();
  }

  private SessionHeader header() {
    return session().header();
  }

  String name() {
    return series.name();
  }

  boolean simulated() {
    return header().simulated();
  }

  SeriesWords words() {
    return SeriesWords.of(series);
  }

  /** The verdict of the series in one word. */
  String verdict() {
    Verdict verdict = series.summary().verdict();
    return verdict == null ? "not judged" : verdict.name();
  }

  /** The verdict as the name of its look. */
  String mark() {
    return verdict().toLowerCase(Locale.ROOT).replace(' ', '-');
  }

  String sentence() {
    return series.summary().reason();
  }

  FactTable specimen() {
    return new FactTable("Specimen and conditions", SpecimenFacts.specimen(header()));
  }

  FactTable rig() {
    return new FactTable("Instrument and rig", SpecimenFacts.rig(reported));
  }

  FactTable claim() {
    return new FactTable("What is declared", SpecimenFacts.claim(header().claim()));
  }

  String rule() {
    return header().decisionRule().title();
  }

  /** How the transfer time is defined, and how that stands to the standard's words. */
  String definition() {
    return FigureNotes.TRANSFER_TIME;
  }

  FactTable figures() {
    SeriesWords words = words();
    return new FactTable(
        "What the trials say together",
        List.of(
            new Fact("valid trials, n", words.n()),
            new Fact("mean" + ofReturned(), words.mean()),
            new Fact("standard deviation, s" + ofReturned(), words.spread()),
            new Fact("median", median()),
            new Fact("largest", words.largest()),
            new Fact("one-sided factor k₁", factor()),
            new Fact("upper tolerance bound", words.bound()),
            new Fact("common part of U, on top of the bound", common())));
  }

  private String factor() {
    Double bound = series.summary().upperToleranceBoundMillis();
    Double mean = series.summary().meanMillis();
    Double spread = series.summary().standardDeviationMillis();
    return bound == null || mean == null || spread == null || !(spread > 0)
        ? "-"
        : String.format(Locale.ROOT, "%.4g", (bound - mean) / spread);
  }

  /** Times without an end have no mean. */
  private String ofReturned() {
    int noReturns = series.summary().noReturns();
    return noReturns == 0 ? "" : " of the " + (series.summary().n() - noReturns) + " that returned";
  }

  private String median() {
    Double median = series.summary().medianMillis();
    return median == null
        ? "-"
        : Readings.millis(median, series.summary().commonUncertaintyMillis());
  }

  /** Whether the claim is one that a bound is held against. */
  boolean isBounded() {
    DeclaredClaim claim = header().claim();
    return claim != null
        && claim.kind() != DeclaredClaim.Kind.TYPICAL
        && series.summary().upperToleranceBoundMillis() != null;
  }

  boolean isJudged() {
    return header().claim() != null;
  }

  /** What a reader has to know of how the session ended, beside its verdict; else nothing. */
  List<String> warnings() {
    return session().ending() == Ending.COMPLETE
        ? List.of()
        : List.of("How the session ended: " + session().ending().sentence() + ".");
  }

  /** Which traces are drawn. */
  String tracesDrawn() {
    int drawn = reported.traces().size();
    int standing = session().standingTrials().size();
    return drawn == standing
        ? "The output voltage of every trial that stands."
        : "The output voltage of the " + drawn + " longest of " + standing + " trials that stand.";
  }

  boolean hasRemarks() {
    return !remarks().isEmpty();
  }

  private String common() {
    return series.summary().upperToleranceBoundMillis() == null
        ? "-"
        : Readings.millis(series.summary().commonUncertaintyMillis());
  }

  List<TrialPart> trials() {
    return session().trials().stream().map(TrialPart::of).toList();
  }

  boolean hasTrials() {
    return !session().trials().isEmpty();
  }

  /** Whether any trial has a place on an axis of time. */
  boolean isMeasured() {
    return series.points().stream().anyMatch(point -> point.millis() != null);
  }

  boolean hasReturns() {
    return trials().stream().anyMatch(TrialPart::hasReturn);
  }

  List<BudgetPart> budgets() {
    return BudgetPart.of(session().trials());
  }

  boolean hasBudgets() {
    return !budgets().isEmpty();
  }

  /** What is seen of the trials, drawn; empty where nothing was measured. */
  List<String> drawings() {
    List<String> drawings = new ArrayList<>();
    if (isMeasured()) {
      drawings.add(
          drawn(TrialStrips.of(List.of(series), RankBy.LARGEST), STRIP_HEIGHT_PIXELS, "strip"));
    }
    if (!reported.traces().isEmpty()) {
      drawings.add(
          drawn(
              OverlaidTraces.of(reported.traces(), OverlaidTraces.Alignment.LOSS),
              TRACES_HEIGHT_PIXELS,
              "traces"));
    }
    return drawings;
  }

  private String drawn(Figure figure, int heightPixels, String name) {
    return PageFigure.drawn(figure, heightPixels, "session-" + place + "-" + name + "-");
  }

  List<RemarkPart> remarks() {
    return session().remarks().stream().map(RemarkPart::of).toList();
  }

  FactTable evidence() {
    Session session = session();
    return new FactTable(
        "Where the raw captures are",
        List.of(
            new Fact(
                "session file",
                String.valueOf(
                    Objects.requireNonNullElse(session.file().getFileName(), session.file()))),
            new Fact("last seal (SHA-256)", session.lastSeal()),
            new Fact(
                "seals",
                (session.entryCount() == 1 ? "1 entry" : session.entryCount() + " entries")
                    + " and the raw captures of "
                    + Readings.counted(session.trials().size(), "trial")
                    + " held against their seals as this page was made: all intact. Entries that were"
                    + " taken off the end show only against a last seal that was kept elsewhere"),
            new Fact("how it ended", session.ending().sentence()),
            new Fact("session made by", "Mainsgap " + header().programVersion()),
            new Fact("format", "version " + session.formatVersion())));
  }
}
