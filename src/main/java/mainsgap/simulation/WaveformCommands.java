package mainsgap.simulation;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Locale;

/**
 * The part of the ten-field dialect that hands a record out: preamble and blocks of codes. A WORD
 * holds the code as the converter gave it, a BYTE its upper eight bits.
 */
final class WaveformCommands {
  /** The largest chunk, in points. */
  static final int MOST_POINTS_AT_ONCE = 250_000;

  private static final int MOST_POINTS = 2_500_000;

  private final ScopeCore core;
  private final FaultSwitch faults;
  private final PreambleVariant variant;

  private int channel;
  private boolean words;
  private ByteOrder order = ByteOrder.BIG_ENDIAN;
  private int firstPoint;
  private int lastPoint;

  WaveformCommands(ScopeCore core, FaultSwitch faults, PreambleVariant variant) {
    this.core = core;
    this.faults = faults;
    this.variant = variant;
  }

  void setDefaults() {
    channel = 1;
    words = false;
    order = ByteOrder.BIG_ENDIAN;
    firstPoint = 1;
    lastPoint = 1000;
  }

  void addTo(CommandTable table) {
    table
        .command(
            "WAVeform:SOURce", call -> channel = call.numberAfter("CHAN", ScopeRecord.CHANNELS))
        .command("WAVeform:MODE", call -> call.oneOf("RAW"))
        .command("WAVeform:FORMat", call -> words = call.oneOf("BYTE", "WORD").equals("WORD"))
        .command("WAVeform:BYTeorder", this::setOrder)
        .command("WAVeform:UNSigned", call -> call.oneOf("1", "ON"))
        .command("WAVeform:STARt", call -> firstPoint = call.whole(1, MOST_POINTS))
        .command("WAVeform:STOP", call -> lastPoint = call.whole(1, MOST_POINTS))
        .query("WAVeform:PREamble?", call -> faults.numbers(preamble()))
        .query("WAVeform:DATA?", call -> Reply.block(codes()));
  }

  private void setOrder(Call call) {
    order =
        call.oneOf("LSBF", "LSBFIRST", "MSBF", "MSBFIRST").startsWith("LSB")
            ? ByteOrder.LITTLE_ENDIAN
            : ByteOrder.BIG_ENDIAN;
  }

  private ScopeRecord record() {
    return core.record().orElseThrow(() -> new ScpiFault(ScpiError.DATA_STALE));
  }

  /** The preamble of the whole record; the x origin is its first point's time. */
  private String preamble() {
    ScopeRecord record = record();
    RecordPlan plan = record.plan();
    VoltageRange range = plan.ranges().get(channel - 1);
    int bits = words ? record.bits() : 8;
    double increment = range.spanVolts() / (1 << bits);
    String origin =
        switch (variant) {
          case ORIGIN_IN_VOLTS -> Nr3.of(range.middleVolts());
          case ORIGIN_IN_CODES -> Long.toString(-Math.round(range.middleVolts() / increment));
        };
    return String.format(
        Locale.ROOT,
        "%d,0,%d,1,%s,%s,0,%s,%s,%d",
        words ? 1 : 0,
        plan.points(),
        Nr3.of(plan.intervalSeconds()),
        Nr3.of(plan.firstSampleSeconds()),
        Nr3.of(increment),
        origin,
        1 << (bits - 1));
  }

  private byte[] codes() {
    ScopeRecord record = record();
    int count = lastPoint - firstPoint + 1;
    if (count < 1 || count > MOST_POINTS_AT_ONCE || lastPoint > record.plan().points()) {
      throw new ScpiFault(ScpiError.SETTINGS_CONFLICT);
    }
    short[] codes = record.codes(channel);
    ByteBuffer block = ByteBuffer.allocate(words ? count * Short.BYTES : count).order(order);
    for (int i = firstPoint - 1; i < lastPoint; i++) {
      if (words) {
        block.putShort(codes[i]);
      } else {
        block.put((byte) narrowed(codes[i], record.bits()));
      }
    }
    return block.array();
  }

  /** A code as 8 bits, rounded; the lowest and the highest mean the rails alone. */
  static int narrowed(int code, int bits) {
    int highest = (1 << bits) - 1;
    if (code == 0 || code == highest) {
      return code == 0 ? 0 : 0xFF;
    }
    int half = (1 << (bits - 8)) >> 1;
    return Math.max(0, Math.min(0xFF, (code + half) >> (bits - 8)));
  }
}
