package mainsgap.report;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import mainsgap.report.SvgTexts.Placed;
import mainsgap.session.Session;
import mainsgap.signal.Event;
import mainsgap.transfer.outcome.MeasuringTask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands where, read from the SVG itself. */
class FigureLayoutTest {
  private static final FigureSheet FULL_HD = FigureSheet.forVideo(1920, 1080, FigureLook.LIGHT);

  private static List<UnitSeries> units(int count) {
    return UnitSeries.of(
        IntStream.range(0, count)
            .mapToObj(i -> InventedSessions.usual("Lumengrove " + (600 + i), 8 + i))
            .toList());
  }

  private static List<Figure> figures(List<UnitSeries> units) {
    List<Figure> figures = new ArrayList<>();
    for (RankBy by : RankBy.values()) {
      figures.add(TrialStrips.of(units, by));
      figures.add(RankTable.of(units, by));
    }
    for (CleanMeasure measure : CleanMeasure.values()) {
      figures.add(FastAgainstClean.of(units, measure));
    }
    return figures;
  }

  private static void assertTidy(Figure figure, FigureSheet sheet) throws Exception {
    List<Placed> texts = SvgTexts.of(FigureFormat.SVG.bytes(figure, sheet));
    for (Placed text : texts) {
      assertTrue(
          text.box().getX() >= -1
              && text.box().getMaxX() <= sheet.widthPixels() + 1
              && text.box().getY() >= -1
              && text.box().getMaxY() <= sheet.heightPixels() + 1,
          "beyond the edge: " + text);
    }
    for (int i = 0; i < texts.size(); i++) {
      for (Placed other : texts.subList(i + 1, texts.size())) {
        assertFalse(texts.get(i).box().intersects(other.box()), texts.get(i) + " covers " + other);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 8, 20})
  void noTextCoversAnother(int count) throws Exception {
    for (Figure figure : figures(units(count))) {
      assertTidy(figure, FULL_HD);
    }
    for (OverlaidTraces.Alignment alignment : OverlaidTraces.Alignment.values()) {
      assertTidy(OverlaidTraces.of(InventedTraces.many(Math.min(16, count)), alignment), FULL_HD);
    }
  }

  @ParameterizedTest
  @CsvSource({"1280, 720", "1920, 1080", "3840, 2160", "1080, 1920", "700, 400"})
  void noTextCoversAnotherAtAnySize(int width, int height) throws Exception {
    for (Figure figure : figures(units(3))) {
      assertTidy(figure, FigureSheet.forVideo(width, height, FigureLook.DARK));
    }
  }

  @Test
  void namesOfEveryKindHaveTheirPlace() throws Exception {
    String longName = "Überspannungsschutz-Zwischenspeicher ".repeat(6).strip();
    String hebrew = "\u05D2\u05D9\u05D1\u05D5\u05D9 \u05DC\u05D3\u05D5\u05D2\u05DE\u05D4 600";
    String markup = "<b>R&D</b> \"prototype\" ]]>";
    List<UnitSeries> units =
        UnitSeries.of(
            List.of(
                InventedSessions.usual(longName, 7),
                InventedSessions.usual(hebrew, 8),
                InventedSessions.usual(markup, 9),
                InventedSessions.usual("a\u0007b\u202Ec\uD800", 9)));
    for (Figure figure : figures(units)) {
      assertTidy(figure, FULL_HD);
    }
    List<String> texts =
        SvgTexts.of(FigureFormat.SVG.bytes(TrialStrips.of(units, RankBy.LARGEST), FULL_HD)).stream()
            .map(Placed::text)
            .toList();
    assertAll(
        () -> assertTrue(texts.stream().anyMatch(text -> text.startsWith("1. Überspannungs"))),
        () -> assertTrue(texts.contains("2. \u2068" + hebrew + "\u2069"), texts.toString()),
        () -> assertTrue(texts.contains("3. " + markup), texts.toString()),
        () -> assertTrue(texts.contains("3. a b c "), texts.toString()));
  }

  @Test
  void theSmallestTextOfAVideoHas28PixelsAtFullHd() throws Exception {
    for (Figure figure : figures(units(2))) {
      List<Placed> texts = SvgTexts.of(FigureFormat.SVG.bytes(figure, FULL_HD));
      assertEquals(28, texts.stream().mapToDouble(Placed::sizePixels).min().orElse(0), 1e-3);
    }
  }

  @Test
  void theTextIsAsLargeAsChosen() throws Exception {
    FigureSheet large = FigureSheet.forVideo(3840, 2160, 1.5, FigureLook.LIGHT);
    List<Placed> texts =
        SvgTexts.of(FigureFormat.SVG.bytes(TrialStrips.of(units(2), RankBy.LARGEST), large));
    assertEquals(84, texts.stream().mapToDouble(Placed::sizePixels).min().orElse(0), 1e-3);
  }

  @Test
  void twentyUnitsAllHaveTheirPlaceOnAVideo() throws Exception {
    List<UnitSeries> twenty = units(20);
    for (Figure figure :
        List.of(
            TrialStrips.of(twenty, RankBy.LARGEST),
            RankTable.of(twenty, RankBy.LARGEST),
            FastAgainstClean.of(twenty, CleanMeasure.RESIDUAL))) {
      String all =
          SvgTexts.of(FigureFormat.SVG.bytes(figure, FULL_HD)).stream()
              .map(Placed::text)
              .collect(Collectors.joining("\n"));
      for (UnitSeries unit : twenty) {
        assertTrue(all.contains(unit.name()), figure.title() + " lacks " + unit.name());
      }
    }
  }

  @Test
  void unitsThatFindNoRoomAreCounted() throws Exception {
    Figure crowded = TrialStrips.of(units(30), RankBy.LARGEST);
    assertTidy(crowded, FULL_HD);
    assertTrue(
        SvgTexts.of(FigureFormat.SVG.bytes(crowded, FULL_HD)).stream()
            .anyMatch(text -> text.text().matches("\\d+ more units: too many .*")));
  }

  @Test
  void awkwardTrialsAreToldWithoutCoveringEachOther() throws Exception {
    MeasuringTask other = new MeasuringTask(Event.RESTORATION, 120, 60);
    Session hard =
        InventedSessions.session(
            InventedSessions.header("Lumengrove 700", InventedSessions.LOSS_AT_230, Map.of()),
            InventedSessions.noReturn(780),
            InventedSessions.noReturn(770),
            InventedSessions.measured(25, 40, 3),
            InventedSessions.measured(20, 4, 0.5),
            InventedSessions.noInterruption(),
            InventedSessions.refused());
    Session foreign =
        InventedSessions.session(
            InventedSessions.header("Lumengrove 120", other, Map.of()),
            InventedSessions.measured(5, 4));
    List<UnitSeries> units =
        UnitSeries.of(List.of(hard, foreign, InventedSessions.usual("Lumengrove 600", 8)));
    for (Figure figure : figures(units)) {
      assertTidy(figure, FULL_HD);
    }
    String all =
        String.join(
            "\n",
            SvgTexts.of(FigureFormat.SVG.bytes(TrialStrips.of(units, RankBy.LARGEST), FULL_HD))
                .stream()
                .map(Placed::text)
                .toList());
    assertAll(
        () -> assertTrue(all.contains("2 at least 770 to 780 ms"), all),
        () -> assertTrue(all.contains("(+ 1 refused)"), all),
        () -> assertTrue(all.contains("largest at least 780.0"), all),
        () -> assertTrue(all.contains("Lumengrove 120 [not compared]"), all),
        () -> assertTrue(all.contains("Not compared: Lumengrove 120 shows restoration"), all));
  }
}
