package mainsgap.session;

import java.nio.file.Path;

/**
 * Writes one session file: append-only, sealed, durable entry by entry. One thread writes. {@code
 * src/docs/session-format.md} has the format.
 */
public final class SessionLog implements AutoCloseable {
  private SessionLog() {}

  /** Makes a new session file; an existing path, a folder or a path below a file is an error. */
  public static SessionLog create(Path file, SessionHeader header) {
    throw new SessionException("to come: " + file + header);
  }

  /** Opens an existing session to go on with it, after its seals have been checked. */
  public static SessionLog resume(Path file) {
    throw new SessionException("to come: " + file);
  }

  /** The session's header. */
  public SessionHeader header() {
    throw new SessionException("to come");
  }

  /** The number that the next trial gets. */
  public int nextTrialNumber() {
    throw new SessionException("to come");
  }

  /** Appends a trial; on return it is durable. Gives the entry's seal. */
  public String append(Trial trial) {
    throw new SessionException("to come" + trial);
  }

  /** Appends a remark; on return it is durable. Gives the entry's seal. */
  public String append(Remark remark) {
    throw new SessionException("to come" + remark);
  }

  /** Appends that a trial is set aside; the trial itself stays. Gives the entry's seal. */
  public String setAside(int trialNumber, String reason) {
    throw new SessionException("to come" + trialNumber + reason);
  }

  /** The seal of the last entry, in lower-case hexadecimal. */
  public String lastSeal() {
    throw new SessionException("to come");
  }

  @Override
  public void close() {}
}
