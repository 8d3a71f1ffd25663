package mainsgap.simulation;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.Duration;
import java.util.Arrays;
import java.util.stream.IntStream;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/**
 * The dialect that keeps to SCPI-1999: a digitizer without a time-out trigger, which sends REAL,32
 * volts at its inputs. The instrument that speaks it lets one message in at a time.
 */
final class StrictDigitizer implements Instrument.Dialect {
  private static final int CHANNELS = ScopeRecord.CHANNELS;
  private static final int MOST_POINTS = 2_500_000;
  private static final int SWEEPING = 1 << 3;
  private static final int WAITING_FOR_TRIGGER = 1 << 5;
  private static final Duration POLL = Duration.ofMillis(2);

  private final ScopeCore core;
  private final FaultSwitch faults;
  private final String serial;
  private final Clock clock;
  private final StopRequest stop;

  private final double[] spanVolts = new double[CHANNELS];
  private final double[] middleVolts = new double[CHANNELS];
  private int points;
  private double intervalSeconds;
  private double referenceLocation;
  private double offsetSeconds;
  private ByteOrder order = ByteOrder.BIG_ENDIAN;

  StrictDigitizer(
      ScopeCore core, FaultSwitch faults, String serial, Clock clock, StopRequest stop) {
    this.core = core;
    this.faults = faults;
    this.serial = serial;
    this.clock = clock;
    this.stop = stop;
    setDefaults();
  }

  @Override
  public String identity() {
    return "Mainsgap,Simulated digitizer," + serial + ",1.0";
  }

  @Override
  public void reset() {
    core.stop();
    setDefaults();
  }

  /** INITiate is an overlapped command: it is pending until its sweep ends. */
  @Override
  public boolean isPending() {
    return core.isSweeping();
  }

  @Override
  public void finishPending() {
    while (core.isSweeping()) {
      clock.pause(POLL, stop);
    }
  }

  @Override
  public void addTo(CommandTable table) {
    table
        .command("ABORt", call -> core.stop())
        .command("INITiate:CONTinuous", call -> call.oneOf("OFF", "0"))
        .command("INITiate[:IMMediate]", call -> initiate())
        .query("STATus:OPERation:CONDition?", call -> Reply.number(condition()))
        .command("TRIGger[:SEQuence]:SOURce", call -> call.oneOf("IMM", "IMMEDIATE"))
        .command("FORMat[:DATA]", StrictDigitizer::checkFormat)
        .command("FORMat:BORDer", this::setOrder)
        .query("TRACe[:DATA]?", call -> Reply.block(volts(call.numberAfter("CH", CHANNELS))))
        .query("TRACe:POINts?", call -> faults.number(record().plan().points()));
    addInputs(table);
    addSweep(table);
  }

  private void addInputs(CommandTable table) {
    table
        .command("SENSe#:FUNCtion[:ON]", CHANNELS, StrictDigitizer::checkFunction)
        .command("INPut#:COUPling", CHANNELS, call -> call.oneOf("DC"))
        .command(
            "SENSe#:VOLTage[:DC]:RANGe:PTPeak",
            CHANNELS,
            call -> spanVolts[call.suffix() - 1] = faults.spanOf(call.number(0.008, 200)))
        .query(
            "SENSe#:VOLTage[:DC]:RANGe:PTPeak?",
            CHANNELS,
            call -> faults.number(spanVolts[call.suffix() - 1]))
        .command(
            "SENSe#:VOLTage[:DC]:RANGe:OFFSet",
            CHANNELS,
            call -> middleVolts[call.suffix() - 1] = call.number(-100, 100))
        .query(
            "SENSe#:VOLTage[:DC]:RANGe:OFFSet?",
            CHANNELS,
            call -> faults.number(middleVolts[call.suffix() - 1]));
  }

  private void addSweep(CommandTable table) {
    table
        .command("SENSe#:SWEep:POINts", CHANNELS, call -> points = call.whole(2, MOST_POINTS))
        .query("SENSe#:SWEep:POINts?", CHANNELS, call -> faults.number(points))
        .command("SENSe#:SWEep:TINTerval", CHANNELS, call -> intervalSeconds = call.number(1e-9, 1))
        .query("SENSe#:SWEep:TINTerval?", CHANNELS, call -> faults.number(intervalSeconds))
        .query("SENSe#:SWEep:TIME?", CHANNELS, call -> faults.number(points * intervalSeconds))
        .command(
            "SENSe#:SWEep:OREFerence:LOCation",
            CHANNELS,
            call -> referenceLocation = call.number(0, 1))
        .query(
            "SENSe#:SWEep:OREFerence:LOCation?", CHANNELS, call -> faults.number(referenceLocation))
        .command(
            "SENSe#:SWEep:OFFSet:TIME", CHANNELS, call -> offsetSeconds = call.number(-100, 100))
        .query("SENSe#:SWEep:OFFSet:TIME?", CHANNELS, call -> faults.number(offsetSeconds));
  }

  private void setDefaults() {
    Arrays.fill(spanVolts, 20);
    Arrays.fill(middleVolts, 0);
    points = 1000;
    intervalSeconds = 1e-4;
    referenceLocation = 0;
    offsetSeconds = 0;
    order = ByteOrder.BIG_ENDIAN;
  }

  private void initiate() {
    ScopeCore.Stage stage = core.stage();
    if (stage == ScopeCore.Stage.RECORDING || stage == ScopeCore.Stage.WATCHING) {
      throw new ScpiFault(ScpiError.INIT_IGNORED);
    }
    faults.allowStart();
    double firstSample = offsetSeconds - referenceLocation * points * intervalSeconds;
    core.arm(
        new RecordPlan(
            firstSample,
            intervalSeconds,
            points,
            null,
            IntStream.range(0, CHANNELS).mapToObj(this::rangeAtTip).toList()),
        faults.now());
  }

  private VoltageRange rangeAtTip(int channel) {
    return VoltageRange.atTip(
        middleVolts[channel] * SimulatedBench.probeFactor(channel + 1),
        spanVolts[channel] * SimulatedBench.probeFactor(channel + 1));
  }

  private int condition() {
    return switch (core.shownStage()) {
      case RECORDING -> SWEEPING;
      case FILLING, WATCHING -> WAITING_FOR_TRIGGER;
      case IDLE, COMPLETE -> 0;
    };
  }

  private ScopeRecord record() {
    return core.record().orElseThrow(() -> new ScpiFault(ScpiError.DATA_STALE));
  }

  private byte[] volts(int channel) {
    ScopeRecord record = record();
    VoltageRange range = record.plan().ranges().get(channel - 1);
    double lowest = range.lowestVolts() / SimulatedBench.probeFactor(channel);
    double step = range.spanVolts() / SimulatedBench.probeFactor(channel) / (1 << record.bits());
    short[] codes = record.codes(channel);
    ByteBuffer block = ByteBuffer.allocate(codes.length * Float.BYTES).order(order);
    for (short code : codes) {
      block.putFloat((float) (lowest + code * step));
    }
    return block.array();
  }

  private void setOrder(Call call) {
    String word = call.oneOf("NORM", "NORMAL", "SWAP", "SWAPPED");
    order = word.startsWith("NORM") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
  }

  private static void checkFormat(Call call) {
    if (call.parameters().isEmpty()) {
      throw new ScpiFault(ScpiError.MISSING_PARAMETER);
    }
    if (!String.join(",", call.parameters()).equalsIgnoreCase("REAL,32")) {
      throw new ScpiFault(ScpiError.ILLEGAL_PARAMETER_VALUE);
    }
  }

  private static void checkFunction(Call call) {
    String name = call.word().replaceAll("[\"']", "");
    if (!name.equalsIgnoreCase("XTIM:VOLT") && !name.equalsIgnoreCase("XTIMe:VOLTage")) {
      throw new ScpiFault(ScpiError.ILLEGAL_PARAMETER_VALUE);
    }
  }
}
