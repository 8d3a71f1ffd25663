package mainsgap.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RankTableTest {
  private static final List<UnitSeries> TWO =
      UnitSeries.of(
          List.of(InventedSessions.usual("slow", 12), InventedSessions.usual("quick", 6)));

  private static List<String> headings(RankBy by, double width) {
    List<RankColumn> all = RankColumn.of(Ranking.of(TWO, by));
    return RankColumn.fitting(all, width, column -> 10).stream().map(RankColumn::heading).toList();
  }

  @Test
  void columnsThatFindNoRoomGoTheLeastImportantFirst() {
    assertEquals(
        List.of("n", "mean", "s", "largest", "upper bound", "declared", "verdict"),
        headings(RankBy.LARGEST, 100));
    assertEquals(List.of("mean", "largest", "declared", "verdict"), headings(RankBy.LARGEST, 40));
    assertEquals(List.of("largest"), headings(RankBy.LARGEST, 5));
  }

  @Test
  void whatIsRankedByIsNeverLeftOut() {
    assertEquals(List.of("upper bound"), headings(RankBy.UPPER_BOUND, 5));
    assertEquals(List.of("largest residual"), headings(RankBy.RESIDUAL, 5));
    assertEquals(List.of("mean", "verdict"), headings(RankBy.MEAN, 20));
  }

  @Test
  void rowsStandInTheirOrderWithTheirFigures() throws Exception {
    List<SvgTexts.Placed> texts =
        SvgTexts.of(
            FigureFormat.SVG.bytes(
                RankTable.of(TWO, RankBy.LARGEST),
                FigureSheet.forVideo(1920, 1080, FigureLook.LIGHT)));
    double quick = top(texts, "1. quick");
    double slow = top(texts, "2. slow");
    assertTrue(quick < slow, quick + " above " + slow);
    assertEquals(quick, top(texts, "7.000 ms"), 1);
    assertEquals(slow, top(texts, "13.000 ms"), 1);
  }

  @Test
  void fewRowsHaveLargeTypeAndLoseNoColumnByIt() throws Exception {
    List<SvgTexts.Placed> texts =
        SvgTexts.of(
            FigureFormat.SVG.bytes(
                RankTable.of(TWO, RankBy.LARGEST),
                FigureSheet.forVideo(1920, 1080, FigureLook.LIGHT)));
    double size =
        texts.stream()
            .filter(text -> text.text().equals("1. quick"))
            .mapToDouble(SvgTexts.Placed::sizePixels)
            .sum();
    assertTrue(size > 32, "type of " + size + " pixels");
    top(texts, "upper bound");
    top(texts, "n");
  }

  @Test
  void unitThatNeverReturnsIsLastAndNothingIsToldOfAMissingClaim() throws Exception {
    List<UnitSeries> units =
        UnitSeries.of(
            List.of(
                InventedSessions.session(
                    InventedSessions.header("never", InventedSessions.LOSS_AT_230, Map.of()),
                    InventedSessions.noReturn(780)),
                InventedSessions.usual("quick", 6)));
    List<SvgTexts.Placed> texts =
        SvgTexts.of(
            FigureFormat.SVG.bytes(
                RankTable.of(units, RankBy.LARGEST),
                FigureSheet.forVideo(1920, 1080, FigureLook.DARK)));
    assertTrue(top(texts, "1. quick") < top(texts, "2. never"));
    assertFalse(texts.stream().anyMatch(text -> text.text().contains("Infinity")));
  }

  private static double top(List<SvgTexts.Placed> texts, String words) {
    return texts.stream()
        .filter(text -> text.text().equals(words))
        .mapToDouble(text -> text.box().getY())
        .findFirst()
        .orElseThrow(() -> new AssertionError(words + " is missing in " + texts));
  }
}
