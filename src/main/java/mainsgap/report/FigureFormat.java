package mainsgap.report;

import java.nio.file.Path;
import java.util.Locale;

/** The forms in which a figure is written. */
public enum FigureFormat {
  /** Pixels. */
  PNG {
    @Override
    public byte[] bytes(Figure figure, FigureSheet sheet) {
      return FigurePixels.png(figure, sheet);
    }
  },
  /** Shapes and text, which stays text. */
  SVG {
    @Override
    public byte[] bytes(Figure figure, FigureSheet sheet) {
      return FigureSvg.bytes(figure, sheet);
    }
  };

  /** The figure in this form. */
  public abstract byte[] bytes(Figure figure, FigureSheet sheet);

  /** How a file's name ends. */
  public String suffix() {
    return "." + name().toLowerCase(Locale.ROOT);
  }

  /**
   * Writes the figure to a new file.
   *
   * @throws FileInTheWayException if there is such a file already
   * @throws ReportException if it cannot be written; nothing is left of it then
   */
  public void write(Figure figure, FigureSheet sheet, Path file) {
    ReportFile.requireFree(file);
    ReportFile.write(bytes(figure, sheet), file, "the figure");
  }

  /**
   * The same over a file that is there, which whoever calls has agreed upon with the user. Where it
   * cannot be written, the old one stays.
   */
  public void writeOver(Figure figure, FigureSheet sheet, Path file) {
    ReportFile.write(bytes(figure, sheet), file, "the figure");
  }
}
