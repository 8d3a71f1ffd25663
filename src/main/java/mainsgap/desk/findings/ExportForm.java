package mainsgap.desk.findings;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import mainsgap.report.FigureFormat;
import mainsgap.report.FigureLook;
import mainsgap.report.FigureSheet;
import mainsgap.report.ReportException;

/**
 * How a picture is to be written, in the words of whoever asks.
 *
 * @param format of the file
 * @param width in pixels
 * @param height in pixels
 * @param type the height of the smallest type in pixels
 * @param look light or dark
 * @param path of the file
 */
record ExportForm(
    FigureFormat format, String width, String height, String type, FigureLook look, String path) {

  /**
   * What is drawn on.
   *
   * @throws ReportException with a sentence where a number is none, or not allowed
   */
  FigureSheet sheet() {
    return new FigureSheet(
        (int) number("width", width), (int) number("height", height), number("type", type), look);
  }

  /**
   * Where it is written, with the ending of its format.
   *
   * @throws ReportException with a sentence where it is no path
   */
  Path file() {
    String words = path.strip();
    if (words.isEmpty()) {
      throw new ReportException("no file is named: type a path, or choose one");
    }
    try {
      boolean hasEnding = words.toLowerCase(Locale.ROOT).endsWith(format.suffix());
      return Path.of(hasEnding ? words : words + format.suffix()).toAbsolutePath().normalize();
    } catch (InvalidPathException e) {
      throw new ReportException(
          "'" + words + "' is no path (" + e.getReason() + "): type another one", e);
    }
  }

  private static double number(String name, String words) {
    try {
      double number = Double.parseDouble(words.strip());
      if (Double.isFinite(number)) {
        return number;
      }
    } catch (NumberFormatException e) {
      throw new ReportException(notANumber(name, words), e);
    }
    throw new ReportException(notANumber(name, words));
  }

  private static String notANumber(String name, String words) {
    return "the " + name + " '" + words + "' is no number of pixels: type one such as 1080";
  }
}
