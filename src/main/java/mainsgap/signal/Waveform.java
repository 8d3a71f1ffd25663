package mainsgap.signal;

import java.util.Arrays;

/**
 * One channel's samples as the instrument gave them: the data block, the format of its codes and
 * their scale. Immutable: the block is owned, so who makes a waveform hands it over and who asks
 * for it leaves it unchanged.
 */
public final class Waveform {
  private final byte[] block;
  private final CodeFormat format;
  private final Scale scale;

  /**
   * Creates a waveform that owns {@code block}.
   *
   * @throws IllegalArgumentException if the block is not a whole number of codes
   */
  @SuppressWarnings("ArrayIsStoredDirectly") // owned: a copy would double the memory of a record
  public Waveform(byte[] block, CodeFormat format, Scale scale) {
    if (block.length % format.bytesPerCode() != 0) {
      throw new IllegalArgumentException(
          "a block of "
              + block.length
              + " bytes is not a whole number of "
              + format.bytesPerCode()
              + "-byte codes");
    }
    this.block = block;
    this.format = format;
    this.scale = scale;
  }

  /** The number of samples. */
  public int length() {
    return block.length / format.bytesPerCode();
  }

  /** The data block itself, not a copy: leave it unchanged. */
  public byte[] block() {
    return block;
  }

  /** How the codes stand in the block. */
  public CodeFormat format() {
    return format;
  }

  /** How codes become volts. */
  public Scale scale() {
    return scale;
  }

  /** The voltage of sample {@code index} at the probe tip. */
  public double voltsAt(int index) {
    return scale.voltsOf(format.codeAt(block, index));
  }

  /** Whether sample {@code index} lies on a rail of the converter. */
  public boolean isClippedAt(int index) {
    return scale.isClipped(format.codeAt(block, index));
  }

  /** The samples {@code from} (inclusive) to {@code to} (exclusive): a copy. */
  public Waveform part(int from, int to) {
    int bytes = format.bytesPerCode();
    return new Waveform(Arrays.copyOfRange(block, from * bytes, to * bytes), format, scale);
  }

  /** The voltages of samples {@code from} (inclusive) to {@code to} (exclusive), a new array. */
  public double[] volts(int from, int to) {
    double[] volts = new double[to - from];
    for (int i = 0; i < volts.length; i++) {
      volts[i] = voltsAt(from + i);
    }
    return volts;
  }

  /** All voltages, a new array. */
  public double[] volts() {
    return volts(0, length());
  }
}
