package mainsgap.desk.findings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import mainsgap.bench.KeptSession;
import mainsgap.report.SeriesWords;
import mainsgap.report.UnitSeries;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * A session on the page.
 *
 * @param file where it was read
 * @param kept what it holds, but for the captures
 * @param unit its unit's name by itself
 * @param words its figures
 * @param isShown whether the figures show it
 * @param writtenAt when the file was written last before it was read
 */
record OpenedSession(
    Path file,
    KeptSession kept,
    String unit,
    SeriesWords words,
    boolean isShown,
    Instant writtenAt) {

  /**
   * Reads it with all seals checked, for any thread but that of the UI.
   *
   * @throws mainsgap.session.SessionException with a sentence where it cannot be read
   */
  static OpenedSession read(Path file) {
    Instant writtenAt = writtenAt(file);
    KeptSession kept = KeptSession.read(file);
    UnitSeries alone = UnitSeries.of(List.of(kept.session())).get(0);
    return new OpenedSession(file, kept, alone.name(), SeriesWords.of(alone), true, writtenAt);
  }

  OpenedSession shown(boolean shown) {
    return new OpenedSession(file, kept, unit, words, shown, writtenAt);
  }

  /** Whether the file has been written to since, or is gone; not for the UI thread. */
  boolean isOutdated() {
    return !writtenAt(file).equals(writtenAt);
  }

  private static Instant writtenAt(Path file) {
    try {
      return Files.getLastModifiedTime(file).toInstant();
    } catch (IOException e) {
      // reading it tells why
      return Instant.EPOCH;
    }
  }

  String fileName() {
    Path name = file.getFileName();
    return name == null ? file.toString() : name.toString();
  }

  /** Which firmware, as far as it is told. */
  String firmware() {
    String told = kept.session().header().conditions().getOrDefault("firmware", "");
    return told.isBlank() ? "firmware not told" : "firmware " + told.strip();
  }

  /** How many trials count, and which do not. */
  String trials() {
    return "n = " + words.n();
  }

  @Nullable Verdict verdict() {
    return kept.figures().verdict();
  }
}
