package mainsgap.report;

import static mainsgap.report.InventedSessions.LOSS_AT_230;
import static mainsgap.report.InventedSessions.header;
import static mainsgap.report.InventedSessions.measured;
import static mainsgap.report.InventedSessions.noReturn;
import static mainsgap.report.InventedSessions.session;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import mainsgap.session.LoggedTrial;
import mainsgap.session.Session;
import mainsgap.session.SessionHeader;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import org.junit.jupiter.api.Test;

class RankingTest {
  private static final Session QUICK_BUT_ROUGH = unit("quick", 5, 30);
  private static final Session SLOW_BUT_CLEAN = unit("slow", 12, 2);

  private static Session unit(String name, double millis, double residual) {
    return session(
        header(name, LOSS_AT_230, Map.of()),
        measured(millis, residual),
        measured(millis + 1, residual),
        measured(millis + 2, residual));
  }

  private static List<String> order(RankBy by, Session... sessions) {
    return Ranking.of(UnitSeries.of(List.of(sessions)), by).places().stream()
        .map(place -> place.rank() + " " + place.series().name())
        .toList();
  }

  @Test
  void fastAndCleanRankOtherwise() {
    assertEquals(
        List.of("1 quick", "2 slow"), order(RankBy.LARGEST, SLOW_BUT_CLEAN, QUICK_BUT_ROUGH));
    assertEquals(
        List.of("1 slow", "2 quick"), order(RankBy.RESIDUAL, SLOW_BUT_CLEAN, QUICK_BUT_ROUGH));
  }

  @Test
  void noReturnIsTheLongestHoweverShortItsRecord() {
    Session never = session(header("never", LOSS_AT_230, Map.of()), noReturn(3));
    for (RankBy by : List.of(RankBy.LARGEST, RankBy.MEAN, RankBy.RESIDUAL)) {
      assertEquals(List.of("1 slow", "2 never"), order(by, never, SLOW_BUT_CLEAN));
    }
  }

  @Test
  void evenUnitsShareARankAndOneAloneHasNone() {
    assertEquals(
        List.of("1 a", "1 b", "3 c"),
        order(RankBy.LARGEST, unit("a", 5, 1), unit("b", 5, 1), unit("c", 6, 1)));
    assertEquals(List.of("null a"), order(RankBy.LARGEST, unit("a", 5, 1)));
  }

  @Test
  void anotherEventIsShownButNotCompared() {
    MeasuringTask restoration = new MeasuringTask(Event.RESTORATION, 230, 50);
    Session back = session(header("back", restoration, Map.of()), measured(1, 1));
    Ranking ranking =
        Ranking.of(UnitSeries.of(List.of(back, SLOW_BUT_CLEAN, QUICK_BUT_ROUGH)), RankBy.LARGEST);
    assertEquals(
        List.of(
            "Not compared: back shows restoration of mains, 230 V, 50 Hz, the ranked ones loss of"
                + " mains, 230 V, 50 Hz: a rank would mean nothing."),
        ranking.refusals());
    assertEquals("back", ranking.places().get(2).series().name());
    assertEquals(null, ranking.places().get(2).rank());
  }

  @Test
  void whatWasSetAsideDoesNotCount() {
    DeclaredClaim claim = DeclaredClaim.ofMillis(20, "20 ms");
    List<LoggedTrial> trials =
        List.of(
            InventedSessions.trial(1, measured(9, 1), claim, null),
            InventedSessions.trial(2, measured(19, 1), claim, "the lead slipped"));
    UnitSeries series =
        UnitSeries.of(List.of(InventedSessions.of(header("a", LOSS_AT_230, Map.of()), trials)))
            .get(0);
    assertEquals(1, series.summary().n());
    assertEquals(9, series.summary().maxMillis());
    assertEquals(1, series.setAside());
    assertEquals(2, series.points().size());
  }

  @Test
  void firmwareAndLoadBelongToANameWhereTheyDiffer() {
    Map<String, String> old = Map.of("firmware", "1.0", "load", "60 W", "battery", "full");
    Map<String, String> fresh = Map.of("firmware", "2.0", "load", "60 W", "battery", "full");
    assertEquals(
        List.of("a, firmware 1.0", "a, firmware 2.0"),
        names(header("a", LOSS_AT_230, old), header("a", LOSS_AT_230, fresh)));
    assertEquals(
        List.of("a", "b"), names(header("a", LOSS_AT_230, old), header("b", LOSS_AT_230, old)));
    assertEquals(
        List.of("a, load 60 W", "a, load not told"),
        names(
            header("a", LOSS_AT_230, Map.of("load", "60 W")), header("a", LOSS_AT_230, Map.of())));
    assertEquals(
        List.of("a, battery full", "a, battery half"),
        names(
            header("a", LOSS_AT_230, Map.of("battery", "full")),
            header("a", LOSS_AT_230, Map.of("battery", "half"))));
    assertTrue(
        names(header("a", LOSS_AT_230, old), header("a", LOSS_AT_230, old))
            .get(0)
            .endsWith("2026-03-01 12:00:00 UTC"));
  }

  private static List<String> names(SessionHeader... headers) {
    return UnitNames.of(List.of(headers));
  }

  @Test
  void aRankingOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Ranking.of(List.of(), RankBy.LARGEST));
  }
}
