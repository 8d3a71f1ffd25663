package mainsgap.session;

import java.nio.file.Path;
import java.util.List;

/**
 * What a session file holds, but for the raw captures.
 *
 * @param file where it was read
 * @param formatVersion of the file
 * @param header what holds for all trials
 * @param trials in the order of their numbers
 * @param remarks in the order of their making
 * @param ending how the last run ended
 * @param entryCount entries of all kinds
 * @param lastSeal the seal of the last entry, which stands for all of them
 */
public record Session(
    Path file,
    int formatVersion,
    SessionHeader header,
    List<LoggedTrial> trials,
    List<Remark> remarks,
    Ending ending,
    long entryCount,
    String lastSeal) {

  /** Takes its own copies. */
  public Session {
    trials = List.copyOf(trials);
    remarks = List.copyOf(remarks);
  }

  /** The trials that stand: those not set aside. */
  public List<LoggedTrial> standingTrials() {
    return trials.stream().filter(trial -> trial.setAsideReason() == null).toList();
  }
}
