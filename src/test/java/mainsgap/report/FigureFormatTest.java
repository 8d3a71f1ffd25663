package mainsgap.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Element;

class FigureFormatTest {
  private static final FigureSheet SHEET = FigureSheet.forVideo(1280, 720, FigureLook.LIGHT);

  private final Figure figure =
      TrialStrips.of(
          UnitSeries.of(List.of(InventedSessions.usual("Lumengrove 600", 8))), RankBy.LARGEST);

  private final Path folder;

  FigureFormatTest(@TempDir Path folder) {
    this.folder = folder;
  }

  @Test
  void pixelsHaveTheSizeAskedForAndAreNotBlank() throws Exception {
    BufferedImage image =
        ImageIO.read(new ByteArrayInputStream(FigureFormat.PNG.bytes(figure, SHEET)));
    assertEquals(1280, image.getWidth());
    assertEquals(720, image.getHeight());
    assertEquals(FigureLook.LIGHT.ground().getRGB(), image.getRGB(0, 0));
    assertTrue(holds(image, FigureLook.LIGHT.of(TrialPoint.Kind.PASSED).getRGB()));
  }

  private static boolean holds(BufferedImage image, int colour) {
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        if (image.getRGB(x, y) == colour) {
          return true;
        }
      }
    }
    return false;
  }

  @Test
  void shapesAreWellFormedAndCarryTheFiguresAsText() throws Exception {
    byte[] svg = FigureFormat.SVG.bytes(figure, SHEET);
    Element root = SvgTexts.parsed(svg).getDocumentElement();
    assertEquals("svg", root.getLocalName());
    assertEquals("1280", root.getAttribute("width"));
    assertEquals("720", root.getAttribute("height"));
    String text = new String(svg, StandardCharsets.UTF_8);
    assertTrue(text.contains("n = 8 · mean 8.09 ms · s 0.66 ms · largest 9.000 ms"));
    assertTrue(text.contains("sans-serif"));
    assertFalse(text.contains("DOCTYPE"));
  }

  @Test
  void theSameFigureGivesTheSameBytes() {
    for (FigureFormat format : FigureFormat.values()) {
      assertArrayEquals(format.bytes(figure, SHEET), format.bytes(figure, SHEET));
    }
  }

  @Test
  void aFileThatIsThereIsNotReplacedUnasked() throws Exception {
    Path file = Files.writeString(folder.resolve("a.png"), "mine");
    ReportException refused =
        assertThrows(ReportException.class, () -> FigureFormat.PNG.write(figure, SHEET, file));
    assertEquals(
        "there is a file " + file + " already: choose another name, or agree to replace it",
        refused.getMessage());
    assertEquals("mine", Files.readString(file));
    FigureFormat.PNG.writeOver(figure, SHEET, file);
    assertArrayEquals(FigureFormat.PNG.bytes(figure, SHEET), Files.readAllBytes(file));
  }

  @Test
  void aFolderThatIsNotThereIsTold() {
    Path file = folder.resolve("missing").resolve("a.svg");
    ReportException failed =
        assertThrows(ReportException.class, () -> FigureFormat.SVG.write(figure, SHEET, file));
    assertEquals(
        "could not write the figure "
            + file
            + ": there is no folder "
            + file.getParent()
            + "; choose another folder",
        failed.getMessage());
  }

  @Test
  void whatCouldNotBeWrittenWholeLeavesTheOldFile() throws Exception {
    Path file = Files.writeString(folder.resolve("a.png"), "mine");
    // a folder in the place of the unfinished file: nothing can be written there
    Files.createFile(Files.createDirectory(folder.resolve("a.png.part")).resolve("held"));
    ReportException failed =
        assertThrows(ReportException.class, () -> FigureFormat.PNG.writeOver(figure, SHEET, file));
    assertTrue(
        String.valueOf(failed.getMessage()).startsWith("could not write the figure " + file),
        failed.getMessage());
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void nothingUnfinishedIsLeftBeside() throws Exception {
    FigureFormat.SVG.write(figure, SHEET, folder.resolve("a.svg"));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(List.of(folder.resolve("a.svg")), files.toList());
    }
  }

  @Test
  void aSizeThatCannotBeDrawnIsRefused() {
    assertEquals(
        "a figure of 100 x 50 pixels cannot be drawn: choose 320 x 200 to 7680 x 7680",
        assertThrows(ReportException.class, () -> FigureSheet.forVideo(100, 50, FigureLook.LIGHT))
            .getMessage());
    assertEquals(
        "a text of 300.0 pixels does not suit a figure of 400 pixels height: choose 6.0 to 40.0",
        assertThrows(ReportException.class, () -> new FigureSheet(400, 400, 300, FigureLook.LIGHT))
            .getMessage());
  }
}
