package mainsgap.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import mainsgap.bench.ProgramVersion;
import mainsgap.report.FileInTheWayException;
import mainsgap.report.Readings;
import mainsgap.report.ReportException;
import mainsgap.report.ReportFile;
import mainsgap.report.page.ReportPage;
import mainsgap.report.page.ReportedSession;
import mainsgap.session.SessionReader;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StoppedException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Sessions as a page that can be sent, printed and kept. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.Version.class,
    sortOptions = false,
    description =
        "Writes the report of one or several sessions, their seals verified first: what was"
            + " measured, the claim and the verdict, every trial, figures, the uncertainty budget of"
            + " each trial line by line, and the evidence. It is one page that needs nothing beside"
            + " itself, for the screen and for A4 paper.",
    footer = {
      "",
      "Examples:",
      "  mainsgap report unit-3.mainsgap --output reports",
      "  mainsgap report unit-3.mainsgap unit-4.mainsgap --output reports --format json",
      "",
      "The page of one session is named like its file, that of several report.html. A file that is",
      "there already is never written over.",
      "",
      "Exit codes: 0 the report is written, whatever the verdicts in it; 2 wrong use, or a file is in",
      "the way; 3 the report is written, but no trial in it is measured; 5 a seal is broken, a",
      "session cannot be read or the report cannot be written."
    })
final class ReportCommand implements Callable<Integer> {
  private static final String SESSION_SUFFIX = ".mainsgap";

  private final Surroundings surroundings;

  @Parameters(arity = "1..*", paramLabel = "SESSION", description = "Session files.")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--output",
      paramLabel = "DIR",
      required = true,
      description = "The folder for the report; it is made where there is none.")
  private @Nullable Path folder;

  @Option(
      names = "--as",
      paramLabel = "html",
      converter = ReportForm.Converter.class,
      description = "The form of the report: html (default).")
  private ReportForm form = ReportForm.HTML;

  @Mixin private OutputFormat format = new OutputFormat();

  ReportCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Path file = asked().resolve(name());
    try {
      ReportFile.requireFree(file);
      List<ReportedSession> sessions = read();
      write(file, sessions);
      surroundings.print(format.isJson() ? ReportJson.of(file, form, sessions) : file + "\n");
      return exit(sessions).number();
    } catch (StoppedException e) {
      surroundings.terminal().complain("stopped before the report was written");
      return ExitCode.STOPPED.number();
    } catch (FileInTheWayException e) {
      throw new CommandFailure(
          ExitCode.WRONG_USE,
          "there is a file " + file + " already: name another --output, or move that file away",
          e);
    } catch (ReportException e) {
      throw new CommandFailure(ExitCode.SESSION_FAILED, String.valueOf(e.getMessage()), e);
    }
  }

  /**
   * The folder that is asked for.
   *
   * @throws CommandFailure where it is none
   */
  private Path asked() {
    Path asked = Objects.requireNonNull(folder);
    if (asked.toString().isEmpty() || (Files.exists(asked) && !Files.isDirectory(asked))) {
      throw new CommandFailure(
          ExitCode.WRONG_USE,
          "--output '" + asked + "' is no folder: name one, which is made where there is none");
    }
    return asked;
  }

  private String name() {
    if (files.size() > 1) {
      return "report" + form.suffix();
    }
    String name = String.valueOf(files.get(0).getFileName());
    return (name.endsWith(SESSION_SUFFIX)
            ? name.substring(0, name.length() - SESSION_SUFFIX.length())
            : name)
        + form.suffix();
  }

  private List<ReportedSession> read() {
    List<ReportedSession> sessions = new ArrayList<>();
    for (Path file : files) {
      try (SessionReader reader = SessionReader.open(file)) {
        ReportedSession read = ReportedSession.read(reader, surroundings.stop());
        surroundings.progress(
            "seals of %s intact: %s",
            file, Readings.counted(read.session().trials().size(), "trial"));
        requireOther(file, read, sessions);
        sessions.add(read);
      }
    }
    return sessions;
  }

  /** One specimen's trials would be told as those of two. */
  private static void requireOther(
      Path file, ReportedSession read, List<ReportedSession> sessions) {
    for (ReportedSession other : sessions) {
      if (other.session().lastSeal().equals(read.session().lastSeal())) {
        throw new CommandFailure(
            ExitCode.WRONG_USE,
            file
                + " is the same session as "
                + other.session().file()
                + ", by its last seal: name each session once");
      }
    }
  }

  private void write(Path file, List<ReportedSession> sessions) {
    String page = new ReportPage(sessions, ProgramVersion.get(), Clock.system().instant()).html();
    surroundings.stop().throwIfRequested();
    ReportFile.writeNew(page.getBytes(StandardCharsets.UTF_8), file, "the report");
  }

  private ExitCode exit(List<ReportedSession> sessions) {
    boolean isMeasured =
        sessions.stream()
            .flatMap(reported -> reported.session().trials().stream())
            .anyMatch(trial -> !trial.isRefused());
    if (!isMeasured) {
      surroundings.terminal().complain("the report is written, but no trial in it is measured");
    }
    return isMeasured ? ExitCode.DONE : ExitCode.NOTHING_MEASURED;
  }
}
