package mainsgap.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * An instrument that takes messages and answers them: the common commands of IEEE 488.2 and a
 * dialect of its own. Safe for all threads; messages of several connections take turns.
 */
final class Instrument {
  private final StatusRegisters status;
  private final CommandTable table;
  private final Dialect dialect;
  private volatile boolean completionAsked;

  /** What is special about one instrument. */
  interface Dialect {
    /** What {@code *IDN?} answers. */
    String identity();

    /** Adds its commands. */
    void addTo(CommandTable table);

    /** Everything as after power-on. */
    void reset();

    /** Whether an overlapped command still works. */
    boolean isPending();

    /** Returns once nothing is pending. */
    void finishPending();
  }

  Instrument(Dialect dialect, FaultSwitch faults) {
    this.dialect = dialect;
    this.status = new StatusRegisters(faults);
    this.table =
        new CommandTable()
            .query("*IDN?", call -> Reply.text(dialect.identity()))
            .command("*CLS", call -> clear())
            .command("*RST", call -> reset())
            .command("*OPC", call -> completionAsked = true)
            .query("*OPC?", call -> finished())
            .command("*WAI", call -> dialect.finishPending())
            .query("*ESR?", call -> Reply.number(takeEvents()))
            .command("*ESE", call -> status.enableEvents(call.whole(0, 255)))
            .query("*ESE?", call -> Reply.number(status.eventEnable()))
            .command("*SRE", call -> status.enableRequests(call.whole(0, 255)))
            .query("*SRE?", call -> Reply.number(status.requestEnable()))
            .query("*STB?", call -> Reply.number(statusByte()))
            .query("*TST?", call -> Reply.number(0))
            .query("SYSTem:ERRor[:NEXT]?", call -> Reply.text(status.nextError()))
            .query("SYSTem:VERSion?", call -> Reply.text("1999.0"));
    dialect.addTo(table);
  }

  /**
   * Works through a message and gives its answers. An error goes to the queue, answers nothing and
   * drops the rest of the message.
   */
  synchronized List<Reply> handle(String message) {
    List<Reply> replies = new ArrayList<>();
    try {
      for (MessageUnits.Unit unit : MessageUnits.of(message)) {
        CommandTable.Found found = table.find(unit.header());
        Reply reply = found.work().apply(new Call(found.suffix(), unit.parameters()));
        if (reply != null) {
          replies.add(reply);
        }
      }
    } catch (ScpiFault fault) {
      status.add(fault.error());
    }
    return replies;
  }

  /** Takes note of a message that was too long to be kept. */
  synchronized void overrun() {
    status.add(ScpiError.INPUT_BUFFER_OVERRUN);
  }

  private void clear() {
    completionAsked = false;
    status.clear();
  }

  private void reset() {
    completionAsked = false;
    dialect.reset();
  }

  /** {@code *OPC} sets its bit once nothing is pending; nobody can tell before it is asked for. */
  private void noteCompletion() {
    if (completionAsked && !dialect.isPending()) {
      completionAsked = false;
      status.raise(StatusRegisters.OPERATION_COMPLETE);
    }
  }

  private int takeEvents() {
    noteCompletion();
    return status.takeEvents();
  }

  /** Takes note of a reply that was thrown away because a new message came. */
  void interrupted() {
    status.add(ScpiError.QUERY_INTERRUPTED);
  }

  /** The status byte, also while a message is worked through. */
  int statusByte() {
    noteCompletion();
    return status.statusByte();
  }

  private Reply finished() {
    dialect.finishPending();
    return Reply.number(1);
  }
}
