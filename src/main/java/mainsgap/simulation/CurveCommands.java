package mainsgap.simulation;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * The part of the named-value dialect that hands a record out: a preamble whose values have names,
 * each of which can be asked for alone, and a curve. A curve of two bytes holds the converter's
 * code in its upper bits.
 */
final class CurveCommands {
  private static final int MOST_POINTS_AT_ONCE = 1_000_000;

  private final FaultSwitch faults;
  private final RecordWindow window;
  private final Map<String, Supplier<String>> items = new LinkedHashMap<>();

  private int channel;
  private int width;
  private Encoding encoding = Encoding.SIGNED;
  private boolean lsbFirst;
  private boolean envelope;

  private enum Encoding {
    SIGNED("RI"),
    UNSIGNED("RP"),
    VOLTS("FP");

    private final String word;

    Encoding(String word) {
      this.word = word;
    }
  }

  CurveCommands(ScopeCore core, FaultSwitch faults) {
    this.faults = faults;
    this.window = new RecordWindow(core, MOST_POINTS_AT_ONCE);
    items.put("BYT_Nr", () -> Integer.toString(bytes()));
    items.put("BIT_Nr", () -> Integer.toString(8 * bytes()));
    items.put("ENCdg", () -> "BINARY");
    items.put("BN_Fmt", () -> encoding.word);
    items.put("BYT_Or", () -> lsbFirst ? "LSB" : "MSB");
    items.put("WFId", () -> "\"Ch" + channel + ", DC coupling; " + window.points() + " points\"");
    items.put("NR_Pt", () -> Integer.toString(window.points()));
    items.put("PT_Fmt", () -> envelope ? "ENV" : "Y");
    items.put("XUNit", () -> "\"s\"");
    items.put("XINcr", () -> Nr3.of(plan().intervalSeconds()));
    items.put("XZEro", () -> Nr3.of(plan().firstSampleSeconds() + triggerPoint() * interval()));
    items.put("PT_Off", () -> Long.toString(triggerPoint()));
    items.put("YUNit", () -> "\"V\"");
    items.put("YMUlt", () -> Nr3.of(range().spanVolts() / codes()));
    items.put("YOFf", () -> Nr3.of(encoding == Encoding.UNSIGNED ? codes() / 2 : 0));
    items.put("YZEro", () -> Nr3.of(range().middleVolts()));
  }

  void setDefaults() {
    channel = 1;
    width = 1;
    encoding = Encoding.SIGNED;
    lsbFirst = false;
    envelope = false;
    window.setDefaults();
  }

  void addTo(CommandTable table, HeadedTable headed) {
    table
        .command("DATa:SOUrce", call -> channel = call.numberAfter("CH", ScopeRecord.CHANNELS))
        .command("DATa:ENCdg", this::setEncoding)
        .command("DATa:WIDth", call -> width = call.whole(1, 2))
        .command("DATa:STARt", call -> window.setFirst(call.whole(1, Integer.MAX_VALUE)))
        .command("DATa:STOP", call -> window.setLast(call.whole(1, Integer.MAX_VALUE)))
        .command("ACQuire:MODe", call -> envelope = call.oneOf("SAM", "ENV").equals("ENV"));
    table.query("WFMOutpre?", call -> faults.numbers(preamble(headed.isHeaded())));
    headed.query("CURVe?", call -> Reply.block(curve()));
    items.forEach(
        (name, value) ->
            headed.query("WFMOutpre:" + name + "?", call -> faults.numbers(value.get())));
  }

  private void setEncoding(Call call) {
    String word = call.oneOf("RIB", "RPB", "FPB", "SRI", "SRP", "SFP");
    lsbFirst = word.startsWith("S");
    encoding =
        switch (word) {
          case "RPB", "SRP" -> Encoding.UNSIGNED;
          case "FPB", "SFP" -> Encoding.VOLTS;
          default -> Encoding.SIGNED;
        };
  }

  private String preamble(boolean named) {
    return items.entrySet().stream()
        .map(
            item ->
                named
                    ? item.getKey().toUpperCase(Locale.ROOT) + " " + item.getValue().get()
                    : item.getValue().get())
        .collect(Collectors.joining(";", named ? ":WFMOUTPRE:" : "", ""));
  }

  private byte[] curve() {
    short[] taken = window.codes(channel);
    int bits = window.record().bits();
    ByteBuffer block =
        ByteBuffer.allocate(taken.length * bytes())
            .order(lsbFirst ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    int middle = encoding == Encoding.SIGNED ? (1 << (8 * bytes() - 1)) : 0;
    for (short code : taken) {
      if (encoding == Encoding.VOLTS) {
        double step = range().spanVolts() / (1 << bits);
        block.putFloat((float) (range().lowestVolts() + code * step));
      } else if (width == 2) {
        block.putShort((short) ((code << (16 - bits)) - middle));
      } else {
        block.put((byte) (WaveformCommands.narrowed(code, bits) - middle));
      }
    }
    return block.array();
  }

  private RecordPlan plan() {
    return window.record().plan();
  }

  private double interval() {
    return plan().intervalSeconds();
  }

  /** The point next to the trigger, which the preamble counts from. */
  private long triggerPoint() {
    return Math.round(-plan().firstSampleSeconds() / interval());
  }

  private VoltageRange range() {
    return plan().ranges().get(channel - 1);
  }

  private int bytes() {
    return encoding == Encoding.VOLTS ? Float.BYTES : width;
  }

  private double codes() {
    return Math.pow(2, 8.0 * width);
  }
}
