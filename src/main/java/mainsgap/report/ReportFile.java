package mainsgap.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.jspecify.annotations.Nullable;

/** A file that is written whole or not at all: what stood there stays until the new one is. */
public final class ReportFile {
  private ReportFile() {}

  /**
   * Returns where nothing is in the way.
   *
   * @throws FileInTheWayException if there is such a file already
   */
  public static void requireFree(Path file) {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileInTheWayException(file);
    }
  }

  /**
   * Writes a new file, and its folder where there is none.
   *
   * @param what it is, for the sentence where it goes wrong, such as "the report"
   * @throws FileInTheWayException if there is such a file already
   * @throws ReportException if it cannot be written; nothing is left of it then
   */
  public static void writeNew(byte[] bytes, Path file, String what) {
    requireFree(file);
    makeFolder(file.toAbsolutePath().getParent());
    write(bytes, file, what, false);
  }

  private static void makeFolder(@Nullable Path folder) {
    try {
      if (folder != null) {
        Files.createDirectories(folder);
      }
    } catch (FileAlreadyExistsException e) {
      throw new ReportException(e.getFile() + " is a file, no folder: choose another folder", e);
    } catch (IOException e) {
      throw new ReportException(
          "could not make the folder " + folder + ": " + reason(e) + "; choose another folder", e);
    }
  }

  /**
   * Writes {@code bytes} beside {@code file}, then moves them there, over what is there.
   *
   * @param what it is, for the sentence where it goes wrong, such as "the figure"
   * @throws ReportException if it cannot be written; nothing is left of it then
   */
  public static void write(byte[] bytes, Path file, String what) {
    write(bytes, file, what, true);
  }

  private static void write(byte[] bytes, Path file, String what, boolean replaces) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      Files.write(part, bytes);
      move(part, file, replaces);
    } catch (IOException e) {
      ReportException failed =
          new ReportException(
              "could not write "
                  + what
                  + " "
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

  private static void move(Path part, Path file, boolean replaces) throws IOException {
    if (replaces) {
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
      return;
    }
    try {
      Files.move(part, file);
    } catch (FileAlreadyExistsException e) {
      Files.delete(part);
      throw new FileInTheWayException(file);
    }
  }

  private static String why(Path file, IOException fault) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      return "there is no folder " + folder;
    }
    return reason(fault);
  }

  private static String reason(IOException fault) {
    if (fault instanceof AccessDeniedException) {
      return "its folder may not be written to";
    }
    if (fault instanceof FileSystemException known) {
      return known.getReason() == null ? "the system does not allow it" : known.getReason();
    }
    return String.valueOf(fault.getMessage());
  }
}
