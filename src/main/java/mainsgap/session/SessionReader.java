package mainsgap.session;

import java.nio.file.Path;
import mainsgap.signal.Capture;
import org.jdbi.v3.core.Handle;

/**
 * Reads one session file, of any format version so far. Opening it checks the seals of all entries;
 * the data blocks of a trial are held against their seal when its capture is read, one trial at a
 * time. For one thread.
 */
public final class SessionReader implements AutoCloseable {
  private final Path file;
  private final Handle handle;
  private final StoredSession stored;

  private SessionReader(Path file, Handle handle, StoredSession stored) {
    this.file = file;
    this.handle = handle;
    this.stored = stored;
  }

  /** Opens {@code file} and reads everything but the captures. */
  public static SessionReader open(Path file) {
    Handle handle = SessionFile.openForReading(file);
    try {
      return new SessionReader(file, handle, StoredSession.read(file, handle));
    } catch (RuntimeException e) {
      handle.close();
      throw SessionFaults.of(file, "read", e);
    }
  }

  /** What the file held when it was opened. */
  public Session session() {
    return stored.session();
  }

  /** The raw capture of a trial, held against its seal. */
  public Capture capture(int trialNumber) {
    StoredCapture capture = stored.captures().get(trialNumber);
    if (capture == null) {
      throw new SessionException("the session file " + file + " has no trial " + trialNumber);
    }
    try {
      return capture.read(handle);
    } catch (RuntimeException e) {
      throw SessionFaults.of(file, "read", e);
    }
  }

  @Override
  public void close() {
    handle.close();
  }
}
