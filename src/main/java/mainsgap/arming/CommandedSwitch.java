package mainsgap.arming;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import mainsgap.link.LinkException;
import mainsgap.scpi.ScpiException;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StoppedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A mains switch that the program moves. Its rules, whichever thread calls: openings always go
 * through, at the latest after the exchange that is under way; once it is off for good nothing
 * closes it. Its monitor guards the line.
 */
public final class CommandedSwitch implements MainsSwitch, AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(CommandedSwitch.class);

  private final SwitchLine line;
  private final ClosedBy closedBy;
  private final String emergencyStop;
  private final Clock clock;
  private final Queue<SwitchDeed> deeds = new ConcurrentLinkedQueue<>();
  private SwitchPosition known = SwitchPosition.UNKNOWN;

  /** The log is about to be closed: what was confirmed open is told nothing more. */
  private boolean isLeftOff;

  /** Set before the monitor is asked for, so that a closing that waits its turn is given up. */
  private volatile boolean offForGood;

  /**
   * Takes over the line, which {@link #close()} closes.
   *
   * @param closedBy by the program, on a word or by itself
   * @param emergencyStop where the hardware emergency stop of the rig is, in its owner's words
   */
  public CommandedSwitch(SwitchLine line, ClosedBy closedBy, String emergencyStop, Clock clock) {
    if (!closedBy.isCommanded()) {
      throw new IllegalArgumentException("a commanded switch is closed by the program");
    }
    this.line = line;
    this.closedBy = closedBy;
    this.emergencyStop = emergencyStop;
    this.clock = clock;
  }

  @Override
  public ClosedBy closedBy() {
    return closedBy;
  }

  @Override
  public synchronized SwitchPosition position() {
    try {
      return line.position();
    } catch (LinkException | ScpiException e) {
      throw new MainsSwitchException(
          line.words() + " does not tell where the mains switch stands: " + e.getMessage(), e);
    }
  }

  @Override
  public boolean choosesAngle() {
    return line.choosesAngle();
  }

  @Override
  public void ask(Prompt prompt, Consumer<Prompt> hand) {
    switch (prompt.move()) {
      case OPEN -> open("as planned", () -> line.move(SwitchMove.OPEN));
      case CLOSE -> closeMains();
    }
  }

  @Override
  public void openAt(double degrees) {
    String angle = String.format(Locale.ROOT, "as planned, at %.1f degrees", degrees);
    open(angle, () -> line.openAt(degrees));
  }

  @Override
  public void closeNoMore() {
    offForGood = true;
  }

  @Override
  public void emergencyOff() {
    closeNoMore();
    openForGood("emergency off");
  }

  @Override
  public void leaveOff() {
    closeNoMore();
    openAtTheEnd();
  }

  @Override
  public List<SwitchDeed> takeDeeds() {
    List<SwitchDeed> taken = new ArrayList<>();
    for (SwitchDeed deed = deeds.poll(); deed != null; deed = deeds.poll()) {
      taken.add(deed);
    }
    return taken;
  }

  /** Lets go of the line; the switch stays as it is. */
  @Override
  public synchronized void close() {
    line.close();
  }

  private synchronized void openAtTheEnd() {
    if (known != SwitchPosition.OPEN) {
      openForGood("at the end of the series");
    }
    isLeftOff = true;
  }

  private synchronized void open(String why, Runnable move) {
    try {
      told(SwitchMove.OPEN, why, move);
    } catch (LinkException | ScpiException e) {
      throw new MainsSwitchException(
          line.words() + " failed to open the mains switch: " + e.getMessage(), e);
    }
  }

  private synchronized void closeMains() {
    if (offForGood) {
      throw new StoppedException();
    }
    String why =
        closedBy == ClosedBy.PROGRAM
            ? "by itself, as the rig file allows"
            : "on the word of a person";
    try {
      told(SwitchMove.CLOSE, why, () -> line.move(SwitchMove.CLOSE));
    } catch (LinkException | ScpiException e) {
      throw new MainsSwitchException(
          line.words() + " failed to close the mains switch: " + e.getMessage(), e);
    }
  }

  /** The second attempt opens the link anew, where it died before or during the first. */
  private synchronized void openForGood(String why) {
    if (isLeftOff) {
      return;
    }
    try {
      told(SwitchMove.OPEN, why, () -> line.move(SwitchMove.OPEN));
    } catch (RuntimeException first) {
      try {
        told(SwitchMove.OPEN, why + ", once more", () -> line.move(SwitchMove.OPEN));
      } catch (RuntimeException second) {
        throw new MainsSwitchException(loudly(second), second);
      }
    }
  }

  private String loudly(RuntimeException fault) {
    return "THE MAINS SWITCH COULD NOT BE OPENED, mains may still be on: open it by hand now, or use"
        + " the emergency stop ("
        + emergencyStop
        + "); "
        + line.words()
        + " failed: "
        + fault.getMessage();
  }

  /** The only place that moves the switch. */
  private void told(SwitchMove move, String why, Runnable exchange) {
    Instant at = clock.instant();
    known = SwitchPosition.UNKNOWN;
    try {
      exchange.run();
    } catch (RuntimeException e) {
      note(at, move, why, "it failed: " + e.getMessage());
      throw e;
    }
    known = SwitchPosition.after(move);
    note(at, move, why, "done");
  }

  private void note(Instant at, SwitchMove move, String why, String how) {
    String sentence = line.words() + " was told to " + move.verb() + " (" + why + "): " + how;
    LOG.info("{}", sentence);
    deeds.add(new SwitchDeed(at, sentence));
  }
}
