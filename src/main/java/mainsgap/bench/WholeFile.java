package mainsgap.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a text file whole or not at all: what stood there stays until the new one is complete. */
final class WholeFile {
  private WholeFile() {}

  /** Writes {@code text} to a file beside {@code file}, then puts it in its place. */
  static void write(Path file, String text) {
    try {
      // A link stays a link: its goal is replaced.
      Path goal = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
      Path folder = goal.getParent();
      if (folder == null) {
        throw new BenchException(file + " is no file that can be written: choose another");
      }
      Files.createDirectories(folder);
      Path draft = folder.resolve("." + goal.getFileName() + ".part");
      try {
        fill(draft, text);
        replace(draft, goal);
      } finally {
        Files.deleteIfExists(draft);
      }
    } catch (IOException e) {
      throw new BenchException(
          file
              + " cannot be written ("
              + e.getClass().getSimpleName().replace("Exception", "")
              + "): is there room on the disk, and may its folder be written to?",
          e);
    }
  }

  private static void fill(Path draft, String text) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            draft,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
      while (bytes.hasRemaining()) {
        int unused = channel.write(bytes);
      }
      channel.force(true);
    }
  }

  private static void replace(Path draft, Path goal) throws IOException {
    try {
      Files.move(draft, goal, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(draft, goal, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
