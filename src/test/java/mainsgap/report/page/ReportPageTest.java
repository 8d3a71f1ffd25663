package mainsgap.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import mainsgap.report.InventedSessions;
import mainsgap.session.Ending;
import mainsgap.session.LoadFate;
import mainsgap.session.LoggedTrial;
import mainsgap.session.Remark;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.Outcome;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;

class ReportPageTest {
  private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
  private static final DeclaredClaim CLAIM = DeclaredClaim.ofMillis(20, "20 ms");
  private static final String TRIALS = "Every trial of the session";
  private static final String SPECIMEN = "Specimen and conditions";

  @Test
  void everyLineOfABudgetStandsOnThePageWithWhatItAddsToU() {
    Element budget = page(session(withBudget())).table("Uncertainty budget of trial 1");
    assertEquals(
        List.of(
            List.of(
                "loss: sample interval",
                "B",
                "rectangular, √3",
                "3.00 µs",
                "−1",
                "3.00 µs",
                "36.0 %",
                "anew in each trial"),
            List.of(
                "return: noise of 0.5 V and local slope",
                "A",
                "scatter of samples",
                "4.00 µs",
                "1",
                "4.00 µs",
                "64.0 %",
                "anew in each trial"),
            List.of(
                "return: choice of shape (abrupt 100 %)",
                "B",
                "weighted shapes",
                "< 0.01 µs",
                "1",
                "< 0.01 µs",
                "0.0 %",
                "may be alike in all trials")),
        ReadPage.rows(budget));
    assertEquals(
        List.of(
            List.of(
                "combined standard uncertainty", "5.00 µs", "100 %", "root of the sum of squares"),
            List.of("expanded uncertainty U, 95 %", "9.80 µs", "", "k = 1.960")),
        ReadPage.sums(budget));
  }

  @Test
  void lineThatAnotherVersionNamedIsPrintedAsItIs() {
    Element budget = page(session(measured())).table("Uncertainty budget of trial 1");
    List<String> line = ReadPage.rows(budget).get(0);
    assertEquals(List.of("change points", "not known", "not known"), line.subList(0, 3));
    assertEquals(List.of("20.0 µs", "not known", "20.0 µs", "100.0 %"), line.subList(3, 7));
  }

  @Test
  void trialWithoutABudgetSaysWhy() {
    String page =
        page(session(InventedSessions.noInterruption(), InventedSessions.noReturn(780))).words();
    assertTrue(page.contains("Trial 1: no gap over 0.25 ms The shortest gap"), page);
    assertTrue(
        page.contains(
            "Trial 2: no return in 780.00 ms ± 0.10 ms The session does not hold the lines of this"
                + " uncertainty: not recorded."),
        page);
  }

  @Test
  void eachKindOfTrialHasItsLineInTheTable() {
    ReadPage page =
        page(
            session(
                measured(),
                InventedSessions.measured(25, 5),
                InventedSessions.noReturn(780),
                InventedSessions.noInterruption(),
                InventedSessions.refused()));
    List<List<String>> rows = ReadPage.rows(page.table(TRIALS));
    assertEquals(
        List.of("1", "8.000 ms", "± 0.040 ms", "8.00 ms", "90°", "PASS"),
        rows.get(0).subList(0, 6));
    assertEquals("FAIL", rows.get(1).get(5));
    assertTrue(rows.get(1).get(6).contains("longer than the declared 20 ms"), rows.get(1).get(6));
    assertEquals("no return in 780.00 ms", rows.get(2).get(1));
    assertEquals("no gap over 0.25 ms", rows.get(3).get(1));
    assertEquals(
        List.of("refused", "-", "-", "-", "refused", "refused: clipped: choose 400 V or more"),
        rows.get(4).subList(1, 7));
    assertEquals(5, rows.size());
  }

  @Test
  void trialThatWasSetAsideKeepsItsReasonItsNotesAndItsBudget() {
    LoggedTrial trial =
        with(
            InventedSessions.trial(1, measured(), CLAIM, "the lead slipped"),
            List.of("the fan was loud"),
            LoadFate.RESET);
    ReadPage page = page(InventedSessions.of(header("Invented Glowbox 300"), List.of(trial)));
    List<String> row = ReadPage.rows(page.table(TRIALS)).get(0);
    assertEquals("set aside", row.get(5));
    assertEquals("the lead slippedthe fan was loudload: reset", row.get(6));
    assertTrue(page.words().contains("Trial 1: 8.000 ms ± 0.040 ms (set aside)"), page.words());
    assertEquals("0 (+ 1 set aside)", page.fact("What the trials say together", "valid trials, n"));
  }

  @Test
  void theVerdictStandsWithItsSentenceItsRuleAndTheDefinition() {
    ReadPage page = page(InventedSessions.usual("Invented Glowbox 300", 9));
    String words = page.words();
    assertTrue(words.contains("PASS the upper bound"), words);
    assertTrue(words.contains("Decision rule of a trial: guarded acceptance and rejection"), words);
    assertTrue(words.contains("near the total transfer time of IEC 62040-3"), words);
    String figures = "What the trials say together";
    assertEquals("8", page.fact(figures, "valid trials, n"));
    assertEquals("10.000 ms", page.fact(figures, "largest"));
    // the exact factor for n = 8 at 95 % and 95 %, by the noncentral t distribution
    assertEquals("3.187", page.fact(figures, "one-sided factor k₁"));
    assertTrue(words.contains("The claim is met by the bound"), words);
    assertEquals("20 ms", page.fact("What is declared", "declared, as printed"));
    assertEquals("unknown", page.fact("What is declared", "its definition"));
  }

  @Test
  void withoutAClaimNothingIsJudged() {
    Session session = InventedSessions.session(withoutClaim(), measured());
    ReadPage page = page(session);
    assertEquals("none: nothing is judged", page.fact("What is declared", "declared time"));
    assertFalse(page.words().contains("Decision rule"), page.words());
    assertFalse(page.words().contains("claim is met"), page.words());
    assertEquals("not judged", ReadPage.rows(page.table(TRIALS)).get(0).get(5));
  }

  @Test
  void whatTheSessionDoesNotHoldIsSaidToBeNotRecorded() {
    ReadPage page = page(session(measured()));
    for (String label : List.of("serial", "firmware", "load")) {
      assertEquals("not recorded", page.fact(SPECIMEN, label));
    }
    assertEquals("not recorded", page.fact("Instrument and rig", "measured by"));
  }

  @Test
  void whatTheSessionHoldsIsToldAsItStandsThere() {
    SessionHeader header =
        InventedSessions.header(
            "Invented Glowbox 300",
            InventedSessions.LOSS_AT_230,
            Map.of("serial", "GB-7", "firmware", "2.1", "load", "60 W", "state of charge", "90 %"));
    ReadPage page = page(InventedSessions.session(header, measured()));
    assertEquals("GB-7", page.fact(SPECIMEN, "serial"));
    assertEquals("2.1", page.fact(SPECIMEN, "firmware"));
    assertEquals("60 W", page.fact(SPECIMEN, "load"));
    assertEquals("90 %", page.fact(SPECIMEN, "state of charge"));
    assertEquals("loss of mains, 230 V, 50 Hz", page.fact(SPECIMEN, "event"));
  }

  /** A trial that never came back has no place in a mean. */
  @Test
  void theMeanSaysWhichTrialsItIsOf() {
    ReadPage page = page(session(measured(), measured(), InventedSessions.noReturn(400)));
    assertEquals(
        "8.000 ms", page.fact("What the trials say together", "mean of the 2 that returned"));
  }

  @Test
  void evidenceNamesTheFileTheSealAndTheVersion() {
    ReadPage page = page(session(measured()));
    String evidence = "Where the raw captures are";
    assertEquals("invented.mainsgap", page.fact(evidence, "session file"));
    assertEquals("0".repeat(64), page.fact(evidence, "last seal (SHA-256)"));
    assertTrue(page.fact(evidence, "seals").contains("all intact. Entries that were taken off"));
    assertEquals("Mainsgap 0.1.0", page.fact(evidence, "session made by"));
    assertTrue(page.words().contains("by Mainsgap 9.9.9"), page.words());
  }

  @Test
  void onlySimulatedSessionsBearTheMark() {
    assertFalse(page(session(measured())).words().toLowerCase(Locale.ROOT).contains("simulated"));
    String simulated =
        page(InventedSessions.session(simulated("Invented Glowbox 300"), measured())).words();
    assertTrue(simulated.contains("SIMULATED DATA."), simulated);
    assertTrue(simulated.contains("Invented Glowbox 300 simulated"), simulated);
  }

  @Test
  void sessionWithoutATrialSaysSo() {
    ReadPage page = page(session());
    assertTrue(page.words().contains("The session holds no trial."), page.words());
    assertTrue(page.all("svg").isEmpty());
    assertTrue(page.all("details").isEmpty());
  }

  @Test
  void strangersTextStaysText() {
    String nasty = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>{{madeBy}}&amp;";
    String controls = "\u0000\u0007\u001B[31m\u0085\u202E\uFFFE";
    SessionHeader header =
        InventedSessions.header(
            nasty, InventedSessions.LOSS_AT_230, Map.of(nasty, nasty + controls));
    LoggedTrial trial =
        with(
            InventedSessions.trial(1, measured(), CLAIM, nasty + controls),
            List.of(nasty, "x".repeat(2000)),
            LoadFate.DAMAGED);
    Session session =
        new Session(
            Path.of("a&b<i>.mainsgap"),
            1,
            header,
            List.of(trial),
            List.of(new Remark(NOON, Remark.Kind.NOTE, nasty + controls)),
            Ending.COMPLETE,
            3,
            "0".repeat(64));
    ReadPage page = page(session);
    assertTrue(page.all("script").isEmpty());
    assertTrue(page.all("img").isEmpty());
    assertTrue(page.all("i").isEmpty());
    assertEquals(nasty, page.fact(SPECIMEN, "unit"));
    assertEquals(nasty + " [31m", page.fact(SPECIMEN, nasty));
    assertTrue(page.words().codePoints().noneMatch(one -> one < ' ' || one == 0x202E));
  }

  @Test
  void pageRunsNothingAndFetchesNothing() {
    ReadPage page = page(InventedSessions.usual("Invented Glowbox 300", 9));
    assertFalse(page.all("svg").isEmpty());
    for (Element element : page.all("*")) {
      NamedNodeMap attributes = element.getAttributes();
      for (int i = 0; i < attributes.getLength(); i++) {
        String name = attributes.item(i).getNodeName();
        String value = attributes.item(i).getNodeValue();
        assertFalse(name.startsWith("on"), name);
        boolean isLink = name.equals("src") || name.endsWith("href");
        assertFalse(isLink && !value.startsWith("#"), name + "=" + value);
        assertFalse(
            value.contains("url(") && !value.matches("(?s).*url\\(['\"]?#.*"), name + "=" + value);
      }
    }
    assertFalse(page.all("style").get(0).getTextContent().contains("url("));
    assertFalse(page.all("style").get(0).getTextContent().contains("@import"));
  }

  @Test
  void severalSessionsHaveAListWhoseLinksLeadToThem() {
    ReadPage page =
        page(
            InventedSessions.usual("Invented Glowbox 300", 9),
            InventedSessions.session(simulated("Invented Amberline 1"), measured()));
    List<List<String>> list = ReadPage.rows(page.table("Sessions of this report"));
    assertEquals(2, list.size());
    assertEquals("Invented Glowbox 300", list.get(0).get(0));
    assertEquals("PASS", list.get(0).get(5));
    assertEquals("Invented Amberline 1 (simulated)", list.get(1).get(0));
    Set<String> names = new HashSet<>();
    for (Element element : page.all("*")) {
      String id = element.getAttribute("id");
      assertTrue(id.isEmpty() || names.add(id), "two elements have the name " + id);
    }
    for (Element link : page.all("a")) {
      assertTrue(names.contains(link.getAttribute("href").replaceFirst("#", "")));
    }
    assertEquals(2, page.all("a").size());
  }

  @Test
  void tablesCanBeReadAloud() {
    ReadPage page = page(session(withBudget(), InventedSessions.refused()));
    assertEquals("en", page.document().getDocumentElement().getAttribute("lang"));
    assertEquals(1, page.all("h1").size());
    for (Element table : page.all("table")) {
      assertEquals(1, ReadPage.all(table, "caption").size());
    }
    for (Element head : page.all("th")) {
      assertTrue(Set.of("row", "col").contains(head.getAttribute("scope")), ReadPage.words(head));
    }
    for (Element drawing : page.all("svg")) {
      assertEquals("img", drawing.getAttribute("role"));
      assertFalse(ReadPage.words(ReadPage.all(drawing, "title").get(0)).isEmpty());
    }
  }

  @Test
  void reportOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new ReportPage(List.of(), "9.9.9", NOON));
  }

  private static ReadPage page(Session... sessions) {
    List<ReportedSession> reported = new ArrayList<>();
    for (Session session : sessions) {
      reported.add(new ReportedSession(session, List.of(), List.of()));
    }
    return ReadPage.of(new ReportPage(reported, "9.9.9", NOON).html());
  }

  private static Session session(Outcome... outcomes) {
    return InventedSessions.session(header("Invented Glowbox 300"), outcomes);
  }

  private static SessionHeader header(String unit) {
    return InventedSessions.header(unit, InventedSessions.LOSS_AT_230, Map.of());
  }

  private static SessionHeader simulated(String unit) {
    return changed(header(unit), true, CLAIM);
  }

  private static SessionHeader withoutClaim() {
    return changed(header("Invented Glowbox 300"), false, null);
  }

  private static SessionHeader changed(
      SessionHeader header, boolean simulated, @Nullable DeclaredClaim claim) {
    return new SessionHeader(
        header.startedAt(),
        header.programVersion(),
        simulated,
        header.unit(),
        claim,
        header.task(),
        header.instrument(),
        header.rig(),
        header.conditions());
  }

  private static Measured measured() {
    return InventedSessions.measured(8, 3);
  }

  private static Measured withBudget() {
    Measured other = measured();
    return new Measured(
        Event.LOSS,
        other.lossSeconds(),
        other.lastOpeningSeconds(),
        other.firstReturnSeconds(),
        other.returnSeconds(),
        other.transferMillis(),
        new UncertaintyBudget(
            List.of(
                new UncertaintyBudget.Component("loss: sample interval", 0.003, false),
                new UncertaintyBudget.Component(
                    "return: noise of 0.5 V and local slope", 0.004, false),
                new UncertaintyBudget.Component("return: choice of shape (abrupt 100 %)", 0, true)),
            1.96),
        other.furtherInterruptions(),
        other.deadMillis(),
        other.usableMillis(),
        other.recoveryMillis(),
        other.pointOnWaveDegrees(),
        other.supplies(),
        other.cleanness(),
        other.others());
  }

  private static LoggedTrial with(LoggedTrial trial, List<String> notes, LoadFate load) {
    return new LoggedTrial(
        trial.number(),
        trial.at(),
        trial.figures(),
        trial.budget(),
        trial.sentence(),
        trial.verdictReason(),
        trial.setAsideReason(),
        notes,
        load,
        trial.seal());
  }
}
