package mainsgap.report;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
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
   * @throws ReportException if there is such a file already, or it cannot be written
   */
  public void write(Figure figure, FigureSheet sheet, Path file) {
    write(bytes(figure, sheet), file, StandardOpenOption.CREATE_NEW);
  }

  /** The same over a file that is there, which whoever calls has agreed upon with the user. */
  public void writeOver(Figure figure, FigureSheet sheet, Path file) {
    write(
        bytes(figure, sheet),
        file,
        StandardOpenOption.CREATE,
        StandardOpenOption.TRUNCATE_EXISTING);
  }

  private static void write(byte[] bytes, Path file, StandardOpenOption... how) {
    StandardOpenOption[] options = Arrays.copyOf(how, how.length + 1);
    options[how.length] = StandardOpenOption.WRITE;
    try {
      Files.write(file, bytes, options);
    } catch (FileAlreadyExistsException e) {
      throw new ReportException(
          "there is a file " + file + " already: choose another name, or agree to replace it", e);
    } catch (IOException e) {
      throw new ReportException(
          "could not write the figure " + file + ": " + e.getMessage() + "; choose another folder",
          e);
    }
  }
}
