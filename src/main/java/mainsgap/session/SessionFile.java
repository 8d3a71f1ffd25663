package mainsgap.session;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteOpenMode;

/** A session file on the disk: its path is checked, it is opened, its format is told. */
final class SessionFile {
  /** The format that this version writes, and the newest that it reads. */
  static final int FORMAT_VERSION = 1;

  private static final int APPLICATION_ID = 0x4D475350;

  /** A reader holds the file for one trial at most, a writer for one entry. */
  private static final int BUSY_MILLIS = 5_000;

  private static final int LOCK_MILLIS = 100;

  private SessionFile() {}

  /** Makes a new file with the tables of the format. Nothing is left of it where that fails. */
  static Handle create(Path file) {
    makeEmpty(file);
    try {
      Handle handle = connect(file);
      try {
        makeWritable(handle);
        runSchema(handle);
        return handle;
      } catch (RuntimeException e) {
        handle.close();
        throw e;
      }
    } catch (RuntimeException e) {
      discard(file, e);
      throw SessionFaults.of(file, "make", e);
    }
  }

  /** Opens an existing file for appending. */
  static Handle openForAppending(Path file) {
    Handle handle = openForReading(file);
    try {
      makeWritable(handle);
      return handle;
    } catch (RuntimeException e) {
      handle.close();
      throw SessionFaults.of(file, "go on with", e);
    }
  }

  /** Takes the lock of a writer: another one holds it for long, so there is no use in waiting. */
  static void takeLock(Handle handle) {
    handle.execute("PRAGMA busy_timeout = " + LOCK_MILLIS);
    handle.execute("BEGIN IMMEDIATE");
    handle.execute("PRAGMA busy_timeout = " + BUSY_MILLIS);
  }

  /** Opens an existing file for reading. */
  static Handle openForReading(Path file) {
    requireFile(file);
    try {
      Handle handle = connect(file);
      try {
        requireFormat(file, handle);
        return handle;
      } catch (RuntimeException e) {
        handle.close();
        throw e;
      }
    } catch (RuntimeException e) {
      throw SessionFaults.of(file, "open", e);
    }
  }

  private static void requireFile(Path file) {
    if (Files.isDirectory(file)) {
      throw new SessionException(file + " is a folder, not a session file; name a file in it");
    }
    if (!Files.exists(file)) {
      throw new SessionException("there is no session file " + file + "; check the path");
    }
  }

  private static void makeEmpty(Path file) {
    if (Files.isDirectory(file)) {
      throw new SessionException(file + " is a folder; name a new session file in it");
    }
    Path inTheWay = fileAbove(file);
    if (inTheWay != null) {
      throw new SessionException(
          "the session file " + file + " lies below " + inTheWay + ", which is a file, no folder");
    }
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      Files.createFile(file);
    } catch (FileAlreadyExistsException e) {
      throw new SessionException(
          "the session file "
              + file
              + " exists already; go on with it by --continue, or name another file",
          e);
    } catch (IOException e) {
      throw new SessionException(
          "could not make the session file "
              + file
              + ": the folder may not be written to; choose another one",
          e);
    }
  }

  private static @Nullable Path fileAbove(Path file) {
    for (Path at = file.toAbsolutePath().getParent(); at != null; at = at.getParent()) {
      if (Files.exists(at) && !Files.isDirectory(at)) {
        return at;
      }
    }
    return null;
  }

  private static Handle connect(Path file) {
    SQLiteConfig config = new SQLiteConfig();
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    config.setBusyTimeout(BUSY_MILLIS);
    return Jdbi.create("jdbc:sqlite:" + file.toAbsolutePath(), config.toProperties()).open();
  }

  /** One file is left between entries, and an entry is on the disk before it counts. */
  private static void makeWritable(Handle handle) {
    String journal =
        handle.createQuery("PRAGMA journal_mode = " + JournalMode.DELETE).mapTo(String.class).one();
    if (!journal.equalsIgnoreCase(JournalMode.DELETE.name())) {
      throw new SessionException("a session needs a rollback journal, found " + journal);
    }
    handle.execute("PRAGMA synchronous = EXTRA");
  }

  private static void runSchema(Handle handle) {
    try (Statement statement = handle.getConnection().createStatement()) {
      statement.executeUpdate("BEGIN IMMEDIATE;\n" + schema() + "\nCOMMIT;");
    } catch (SQLException e) {
      throw new SessionException("the tables of the session could not be made", e);
    }
  }

  private static String schema() {
    try (InputStream sql = SessionFile.class.getResourceAsStream("format-1.sql")) {
      if (sql == null) {
        throw new AssertionError("format-1.sql is part of the program");
      }
      return new String(sql.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void requireFormat(Path file, Handle handle) {
    int application = handle.createQuery("PRAGMA application_id").mapTo(int.class).one();
    if (application != APPLICATION_ID) {
      throw new SessionException(file + " is not a Mainsgap session");
    }
    int version = handle.createQuery("PRAGMA user_version").mapTo(int.class).one();
    if (version < 1 || version > FORMAT_VERSION) {
      throw new SessionException(
          "the session file "
              + file
              + " has format version "
              + version
              + ", this program reads 1 to "
              + FORMAT_VERSION
              + "; use a newer version of Mainsgap");
    }
  }

  static void discard(Path file, RuntimeException cause) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }
}
