package mainsgap.session;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What the data base complains of, as a sentence. */
final class SessionFaults {
  private SessionFaults() {}

  /** The sentence for {@code fault}, met while trying to {@code verb} the session {@code file}. */
  static SessionException of(Path file, String verb, RuntimeException fault) {
    if (fault instanceof SessionException known) {
      return known;
    }
    String tried = "could not " + verb + " the session file " + file + ": ";
    SQLiteException cause = sqliteCauseOf(fault);
    String why = cause == null ? String.valueOf(fault.getMessage()) : why(cause);
    return new SessionException(tried + why, fault);
  }

  private static String why(SQLiteException cause) {
    SQLiteErrorCode primary = SQLiteErrorCode.getErrorCode(cause.getResultCode().code & 0xFF);
    return switch (primary) {
      case SQLITE_FULL -> "the disk is full; make room, then go on with this session";
      case SQLITE_READONLY, SQLITE_PERM ->
          "it, or its folder, is read-only; allow writing there or choose another folder";
      case SQLITE_CANTOPEN -> "it, or its folder, may not be opened; check who may read it";
      case SQLITE_BUSY, SQLITE_LOCKED ->
          "another program holds it; end that one first, or use another file";
      case SQLITE_IOERR -> "the disk gave an input or output error; check the disk";
      case SQLITE_NOTADB -> "it is not a Mainsgap session";
      case SQLITE_ERROR ->
          "it lacks a part of the format (" + cause.getMessage() + "); use a copy of it";
      case SQLITE_CORRUPT -> "it is damaged; use a copy of it";
      default -> String.valueOf(cause.getMessage());
    };
  }

  private static @Nullable SQLiteException sqliteCauseOf(Throwable fault) {
    for (Throwable at = fault; at != null; at = at.getCause()) {
      if (at instanceof SQLiteException found) {
        return found;
      }
    }
    return null;
  }
}
