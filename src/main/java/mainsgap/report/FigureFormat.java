package mainsgap.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
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
    if (Files.exists(file)) {
      throw new FileInTheWayException(file);
    }
    write(bytes(figure, sheet), file);
  }

  /**
   * The same over a file that is there, which whoever calls has agreed upon with the user. Where it
   * cannot be written, the old one stays.
   */
  public void writeOver(Figure figure, FigureSheet sheet, Path file) {
    write(bytes(figure, sheet), file);
  }

  private static void write(byte[] bytes, Path file) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      Files.write(part, bytes);
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      ReportException failed =
          new ReportException(
              "could not write the figure "
                  + file
                  + ": "
                  + why(file, e)
                  + "; choose another folder",
              e);
      try {
        boolean unused = Files.deleteIfExists(part);
      } catch (IOException left) {
        failed.addSuppressed(left);
      }
      throw failed;
    }
  }

  private static String why(Path file, IOException fault) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      return "there is no folder " + folder;
    }
    if (fault instanceof AccessDeniedException) {
      return "its folder may not be written to";
    }
    return fault instanceof FileSystemException known && known.getReason() != null
        ? known.getReason()
        : String.valueOf(fault.getMessage());
  }
}
