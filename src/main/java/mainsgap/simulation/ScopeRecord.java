package mainsgap.simulation;

import java.util.HashMap;
import java.util.Map;

/**
 * A record that the scope holds. Its samples are made when they are first asked for, from the
 * voltages of the bench and the noise of the converter. One thread at a time.
 */
final class ScopeRecord {
  static final int CHANNELS = 4;

  /** The external trigger input, wired to the mains-present signal; no channel of a record. */
  static final int EXTERNAL = 0;

  /** The converter's own noise, as a fraction of its range. */
  static final double NOISE_SHARE = 6e-4;

  private final Episode episode;
  private final double zeroSeconds;
  private final RecordPlan plan;
  private final int bits;
  private final long noiseSeed;
  private final Map<Integer, short[]> codes = new HashMap<>();

  /**
   * A record of {@code episode}.
   *
   * @param zeroSeconds where on the episode's axis the record's own 0 s lies
   */
  ScopeRecord(Episode episode, double zeroSeconds, RecordPlan plan, int bits, long noiseSeed) {
    this.episode = episode;
    this.zeroSeconds = zeroSeconds;
    this.plan = plan;
    this.bits = bits;
    this.noiseSeed = noiseSeed;
  }

  RecordPlan plan() {
    return plan;
  }

  int bits() {
    return bits;
  }

  /** The codes of {@code channel} (from 1), 0 to 2^bits - 1; owned by the record. */
  short[] codes(int channel) {
    return codes.computeIfAbsent(channel, this::digitized);
  }

  /** What {@code channel} of the bench carries. */
  private static Voltage wireOf(Episode episode, int channel) {
    return switch (channel) {
      case 1 -> episode.output();
      case 2 -> episode.mains();
      case EXTERNAL, 3 -> episode.signals().mainsPresent();
      case 4 -> episode.signals().unitOnMains();
      default -> Voltage.NONE;
    };
  }

  /** What the scope makes of {@code channel}, in the volts that it shows. */
  static Voltage shownOf(Episode episode, int channel, RecordPlan plan) {
    Voltage wire = wireOf(episode, channel);
    if (channel == EXTERNAL) {
      return wire;
    }
    double shownPerTip = plan.ranges().get(channel - 1).shownPerTip();
    return at -> wire.voltsAt(at) * shownPerTip;
  }

  private short[] digitized(int channel) {
    Voltage shown = shownOf(episode, channel, plan);
    VoltageRange range = plan.ranges().get(channel - 1);
    int highest = (1 << bits) - 1;
    double codesPerVolt = (1 << bits) / range.spanVolts();
    double noiseCodes = NOISE_SHARE * (1 << bits);
    double middle = 1 << (bits - 1);
    short[] made = new short[plan.points()];
    for (int i = 0; i < made.length; i++) {
      double at = zeroSeconds + plan.firstSampleSeconds() + i * plan.intervalSeconds();
      double code =
          middle
              + (shown.voltsAt(at) - range.middleVolts()) * codesPerVolt
              + noiseCodes * Noise.at(noiseSeed + channel, i);
      made[i] = (short) Math.max(0, Math.min(highest, Math.round(code)));
    }
    return made;
  }
}
