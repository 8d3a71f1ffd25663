package mainsgap.desk.findings;

import java.nio.file.Path;
import java.util.Locale;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.desk.manners.Background;
import mainsgap.desk.manners.DeskMemory;
import mainsgap.report.Figure;
import mainsgap.report.FigureSheet;
import mainsgap.report.FileInTheWayException;
import mainsgap.report.ReportException;
import org.jspecify.annotations.Nullable;

/** Writes what is on the screen to a file, beside the UI thread, on which this is used. */
final class Export {
  private static final String FOLDER = "findings.export-folder";

  private final Background background;
  private final DeskMemory memory;
  private final Captures captures;
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper failed = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper writing = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<@Nullable Path> inTheWay = new ReadOnlyObjectWrapper<>();

  Export(Background background, DeskMemory memory, Captures captures) {
    this.background = background;
    this.memory = memory;
    this.captures = captures;
  }

  /** How the last writing went, in a sentence; empty before the first. */
  ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** Whether it went wrong. */
  ReadOnlyBooleanProperty failedProperty() {
    return failed.getReadOnlyProperty();
  }

  ReadOnlyBooleanProperty writingProperty() {
    return writing.getReadOnlyProperty();
  }

  /** The file that a person has to agree to lose; null where there is none. */
  ReadOnlyObjectProperty<@Nullable Path> inTheWayProperty() {
    return inTheWay.getReadOnlyProperty();
  }

  /** A file for what is on the screen, in the folder of the last one. */
  String suggestion(FigureOrder order, String size, String suffix) {
    Path folder =
        memory
            .text(FOLDER)
            .map(Path::of)
            .orElseGet(() -> Path.of(System.getProperty("user.home", ".")));
    return folder.resolve(order.fileName() + "-" + size + suffix).toString();
  }

  /** Writes a new file; one that is there is asked about. */
  void write(FigureOrder order, ExportForm form) {
    write(order, form, false);
  }

  /** Writes over the file that was in the way, and over no other. */
  void replace(FigureOrder order, ExportForm form) {
    write(order, form, inTheWay.get() != null && inTheWay.get().equals(form.file()));
  }

  /** Nothing is in the way any more: another name was chosen. */
  void forget() {
    inTheWay.set(null);
    said.set("");
    failed.set(false);
  }

  private void write(FigureOrder order, ExportForm form, boolean over) {
    if (writing.get()) {
      return;
    }
    forget();
    try {
      FigureSheet sheet = form.sheet();
      Path file = form.file();
      writing.set(true);
      background.run(
          () -> {
            Figure figure = order.figure(captures);
            if (over) {
              form.format().writeOver(figure, sheet, file);
            } else {
              form.format().write(figure, sheet, file);
            }
            return file;
          },
          this::written,
          e -> notWritten(file, e));
    } catch (ReportException e) {
      say(String.valueOf(e.getMessage()), true);
    }
  }

  private void written(Path file) {
    writing.set(false);
    Path folder = file.getParent();
    if (folder != null) {
      memory.keep(FOLDER, folder.toString());
    }
    say("Written: " + file, false);
  }

  private void notWritten(Path file, RuntimeException fault) {
    writing.set(false);
    inTheWay.set(fault instanceof FileInTheWayException ? file : null);
    say(String.valueOf(fault.getMessage()), true);
  }

  private void say(String sentence, boolean isFault) {
    failed.set(isFault);
    said.set(sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1));
  }
}
