package mainsgap.session;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.Waveform;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes one session file: append-only, sealed, durable entry by entry. One thread writes; a second
 * writer of the same file is refused, readers are not. {@code src/docs/session-format.md} has the
 * format.
 */
public final class SessionLog implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SessionLog.class);

  private final Path file;
  private final Handle handle;
  private final SessionHeader header;
  private final Set<Integer> setAside = new TreeSet<>();
  private long entries;
  private int trials;
  private String lastSeal = Seal.NONE;
  private boolean held;

  private SessionLog(Path file, Handle handle, SessionHeader header) {
    this.file = file;
    this.handle = handle;
    this.header = header;
  }

  /**
   * Makes a new session file, and its folder where it is missing; an existing path, a folder or a
   * path below a file is an error.
   */
  public static SessionLog create(Path file, SessionHeader header) {
    Handle handle = SessionFile.create(file);
    try {
      SessionLog log = new SessionLog(file, handle, header);
      String unused = log.write(Entry.HEADER, EntryWriting.header(header), Map.of());
      return log;
    } catch (RuntimeException e) {
      handle.close();
      SessionFile.discard(file, e);
      throw SessionFaults.of(file, "make", e);
    }
  }

  /** Opens an existing session to go on with it, after its seals have been checked. */
  public static SessionLog resume(Path file) {
    Handle handle = SessionFile.openForAppending(file);
    try {
      SessionFile.takeLock(handle);
      StoredSession stored = StoredSession.read(file, handle);
      for (StoredCapture capture : stored.captures().values()) {
        Capture unused = capture.read(handle);
      }
      SessionLog log = new SessionLog(file, handle, stored.session().header());
      log.goOnAfter(stored.session());
      return log;
    } catch (RuntimeException e) {
      handle.close();
      throw SessionFaults.of(file, "go on with", e);
    }
  }

  private void goOnAfter(Session session) {
    held = true;
    entries = session.entryCount();
    trials = session.trials().size();
    lastSeal = session.lastSeal();
    for (LoggedTrial trial : session.trials()) {
      if (trial.setAsideReason() != null) {
        setAside.add(trial.number());
      }
    }
  }

  /** The session's header. */
  public SessionHeader header() {
    return header;
  }

  /** The number that the next trial gets. */
  public int nextTrialNumber() {
    return trials + 1;
  }

  /** Appends a trial; on return it is durable. Gives the entry's seal. */
  public String append(Trial trial) {
    if (trial.number() != nextTrialNumber()) {
      throw new SessionException(
          "trial " + trial.number() + " does not follow: the next is " + nextTrialNumber());
    }
    String seal =
        write(
            Entry.TRIAL,
            EntryWriting.trial(trial, header.task().nominalVolts()),
            trial.capture().waveforms());
    trials++;
    return seal;
  }

  /** Appends a remark; on return it is durable. Gives the entry's seal. */
  public String append(Remark remark) {
    return write(Entry.REMARK, EntryWriting.remark(remark), Map.of());
  }

  /** Appends that a trial is set aside; the trial itself stays. Gives the entry's seal. */
  public String setAside(int trialNumber, String reason, Instant at) {
    whyNotSetAside(trialNumber)
        .ifPresent(
            why -> {
              throw new SessionException(why);
            });
    if (reason.isBlank()) {
      throw new SessionException("trial " + trialNumber + " is set aside only with a reason");
    }
    String seal = write(Entry.SET_ASIDE, EntryWriting.setAside(trialNumber, reason, at), Map.of());
    setAside.add(trialNumber);
    return seal;
  }

  /** Why the trial cannot be set aside; empty where it can. */
  Optional<String> whyNotSetAside(int trialNumber) {
    return whyNotTrial(trialNumber)
        .or(
            () ->
                setAside.contains(trialNumber)
                    ? Optional.of("trial " + trialNumber + " is set aside already")
                    : Optional.empty());
  }

  /** Why nothing can be said of the trial; empty where it is there. */
  Optional<String> whyNotTrial(int trialNumber) {
    return trialNumber < 1 || trialNumber > trials
        ? Optional.of("there is no trial " + trialNumber + "; the session has " + trials)
        : Optional.empty();
  }

  /** The seal of the last entry, in lower-case hexadecimal. */
  public String lastSeal() {
    return lastSeal;
  }

  /** Ends the writing. Whether the series ended well is for the last remark to say. */
  @Override
  public void close() {
    if (!handle.isClosed()) {
      release();
      handle.close();
    }
  }

  /** The data base behind, on which tests set limits. */
  Handle handle() {
    return handle;
  }

  private String write(String kind, String content, Map<ChannelRole, Waveform> waveforms) {
    long number = entries + 1;
    String seal = Seal.of(lastSeal, number, kind, content);
    try {
      hold();
      handle.execute("INSERT INTO entry VALUES (?, ?, ?, ?)", number, kind, content, seal);
      waveforms.forEach(
          (role, waveform) ->
              handle.execute(
                  "INSERT INTO block VALUES (?, ?, ?)",
                  number,
                  role.name(),
                  PackedBlock.pack(waveform.block())));
      handle.execute("COMMIT");
      held = false;
    } catch (RuntimeException e) {
      release();
      throw SessionFaults.of(file, "add to", e);
    }
    entries = number;
    lastSeal = seal;
    holdAgain();
    return seal;
  }

  /**
   * Between two entries an open transaction holds the one lock that a writer needs; nothing is
   * written by it, and readers go on. It ends with the process, whatever happens to that.
   */
  private void hold() {
    if (held) {
      return;
    }
    handle.execute("BEGIN IMMEDIATE");
    held = true;
    long found =
        handle.createQuery("SELECT coalesce(max(number), 0) FROM entry").mapTo(long.class).one();
    if (found != entries) {
      throw new SessionException(
          "another program has added to the session file "
              + file
              + ": it has "
              + found
              + " entries, this run knows "
              + entries
              + "; open it anew with --continue");
    }
  }

  /** The entry is durable already: that the lock is lost is for the next entry to say. */
  private void holdAgain() {
    try {
      hold();
    } catch (RuntimeException e) {
      LOG.warn("the session file {} could not be held for the next entry", file, e);
    }
  }

  private void release() {
    held = false;
    try {
      handle.execute("ROLLBACK");
    } catch (RuntimeException e) {
      LOG.debug("the data base had ended the transaction by itself", e);
    }
  }
}
