package mainsgap.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * An instrument that takes messages and answers them: the common commands of IEEE 488.2 and a
 * dialect of its own. Safe for all threads; messages of several connections take turns.
 */
final class Instrument {
  private final StatusRegisters status = new StatusRegisters();
  private final CommandTable table;
  private final Dialect dialect;

  /** What is special about one instrument. */
  interface Dialect {
    /** What {@code *IDN?} answers. */
    String identity();

    /** Adds its commands. */
    void addTo(CommandTable table);

    /** Everything as after power-on. */
    void reset();

    /** Returns once nothing is pending. */
    void finishPending();
  }

  Instrument(Dialect dialect) {
    this.dialect = dialect;
    this.table =
        new CommandTable()
            .query("*IDN?", call -> Reply.text(dialect.identity()))
            .command("*CLS", call -> status.clear())
            .command("*RST", call -> dialect.reset())
            .command("*OPC", call -> finish())
            .query("*OPC?", call -> finished())
            .command("*WAI", call -> dialect.finishPending())
            .query("*ESR?", call -> Reply.number(status.takeEvents()))
            .command("*ESE", call -> status.enableEvents(call.whole(0, 255)))
            .query("*ESE?", call -> Reply.number(status.eventEnable()))
            .command("*SRE", call -> status.enableRequests(call.whole(0, 255)))
            .query("*SRE?", call -> Reply.number(status.requestEnable()))
            .query("*STB?", call -> Reply.number(status.statusByte()))
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

  private void finish() {
    dialect.finishPending();
    status.raise(StatusRegisters.OPERATION_COMPLETE);
  }

  private Reply finished() {
    dialect.finishPending();
    return Reply.number(1);
  }
}
