package mainsgap.report;

import java.nio.file.Path;

/** There is a file already where a figure is to be written: whoever asked may agree to lose it. */
public final class FileInTheWayException extends ReportException {
  private static final long serialVersionUID = 1L;

  FileInTheWayException(Path file) {
    super("there is a file " + file + " already: choose another name, or agree to replace it");
  }
}
