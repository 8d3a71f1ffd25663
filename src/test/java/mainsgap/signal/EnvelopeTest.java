package mainsgap.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Held against a walk through the samples. */
class EnvelopeTest {
  private static final int F = Envelope.FACTOR;

  /** Two whole tiers and a rest, and everything shorter that is special. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 31, 32, 33, 63, 64, 65, 127, 1023, 1024, 1025, 1100})
  void everyRangeIsWhatAWalkFinds(int length) {
    Waveform waveform = noise(length, CodeFormat.SIGNED_8, 1);
    Envelope envelope = Envelope.of(waveform);
    for (int from = 0; from <= length; from++) {
      VoltExtent walked = VoltExtent.NONE;
      assertEquals(walked, envelope.extent(from, from));
      for (int to = from + 1; to <= length; to++) {
        double volts = waveform.voltsAt(to - 1);
        walked = walked.and(new VoltExtent(volts, volts));
        assertEquals(walked, envelope.extent(from, to));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(CodeFormat.class)
  void everyFormatIsExact(CodeFormat format) {
    int length = 3 * F * F + 17;
    Waveform waveform = noise(length, format, 2);
    Envelope envelope = Envelope.of(waveform);
    Random random = new Random(3);
    for (int i = 0; i < 300; i++) {
      int from = random.nextInt(length);
      int to = from + random.nextInt(length - from) + 1;
      assertEquals(walk(waveform, from, to), envelope.extent(from, to));
    }
    assertEquals(walk(waveform, 0, length), envelope.extent());
  }

  /** A probe that was clipped on the wrong way round: higher codes are lower voltages. */
  @Test
  void aScaleThatTurnsTheTraceOverIsFollowed() {
    Waveform waveform =
        new Waveform(
            new byte[] {1, 5, -3},
            CodeFormat.SIGNED_8,
            new Scale(0, -2, 1, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    assertEquals(new VoltExtent(-9, 7), Envelope.of(waveform).extent());
  }

  @Test
  void aSpikeOfOneSampleIsSeenWhereverItStands() {
    int length = 4 * F * F;
    for (int at = 0; at < length; at += 7) {
      byte[] block = new byte[length];
      block[at] = 100;
      Envelope envelope = Envelope.of(new Waveform(block, CodeFormat.SIGNED_8, Scale.VOLTS));
      assertEquals(100, envelope.extent().highestVolts());
      assertEquals(0, envelope.extent(0, at).and(envelope.extent(at + 1, length)).highestVolts());
      assertEquals(100, envelope.extent(at, at + 1).lowestVolts());
    }
  }

  @Test
  void samplesThatAreNoNumberCountAsNotTaken() {
    double[] volts = new double[200];
    Arrays.fill(volts, Double.NaN);
    assertTrue(Envelope.of(ofVolts(volts)).extent().isNone());
    volts[150] = -4;
    assertEquals(new VoltExtent(-4, -4), Envelope.of(ofVolts(volts)).extent());
    assertTrue(Envelope.of(ofVolts(volts)).extent(0, 150).isNone());
  }

  @Test
  void tenMillionSamplesAreToldExactly() {
    int length = 10_000_000;
    byte[] block = new byte[length];
    new Random(4).nextBytes(block);
    for (int i = 0; i < length; i++) {
      block[i] = (byte) (block[i] / 2);
    }
    block[0] = 100;
    block[7_654_321] = 127;
    block[length - 1] = -128;
    Waveform waveform = new Waveform(block, CodeFormat.SIGNED_8, Scale.VOLTS);
    Envelope envelope = Envelope.of(waveform);
    assertEquals(new VoltExtent(-128, 127), envelope.extent());
    assertEquals(new VoltExtent(-64, 127), envelope.extent(0, length - 1));
    assertEquals(new VoltExtent(-64, 100), envelope.extent(0, 7_654_321));
    assertEquals(new VoltExtent(-64, 63), envelope.extent(1, 7_654_321));
    assertEquals(new VoltExtent(-128, 63), envelope.extent(7_654_322, length));
    Random random = new Random(5);
    for (int i = 0; i < 2_000; i++) {
      int from = random.nextInt(length);
      int to = Math.min(length, from + 1 + random.nextInt(20_000));
      assertEquals(walk(waveform, from, to), envelope.extent(from, to));
    }
  }

  @Test
  void aRangeBeyondTheSamplesIsRefused() {
    Envelope envelope = Envelope.of(ofVolts(1, 2, 3));
    assertThrows(IndexOutOfBoundsException.class, () -> envelope.extent(-1, 2));
    assertThrows(IndexOutOfBoundsException.class, () -> envelope.extent(0, 4));
    assertThrows(IndexOutOfBoundsException.class, () -> envelope.extent(2, 1));
  }

  private static VoltExtent walk(Waveform waveform, int from, int to) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = from; i < to; i++) {
      lowest = Math.min(lowest, waveform.voltsAt(i));
      highest = Math.max(highest, waveform.voltsAt(i));
    }
    return new VoltExtent(lowest, highest);
  }

  /** Real codes are drawn as numbers, so that none of them is NaN. */
  private static Waveform noise(int length, CodeFormat format, long seed) {
    Random random = new Random(seed);
    byte[] block = new byte[length * format.bytesPerCode()];
    Scale scale = new Scale(3, 0.1, -7, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    switch (format) {
      case REAL_32_MSB_FIRST, REAL_32_LSB_FIRST -> {
        ByteBuffer buffer = ByteBuffer.wrap(block).order(orderOf(format));
        while (buffer.hasRemaining()) {
          buffer.putFloat((float) random.nextGaussian());
        }
      }
      case REAL_64_LSB_FIRST -> {
        ByteBuffer buffer = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
        while (buffer.hasRemaining()) {
          buffer.putDouble(random.nextGaussian());
        }
      }
      default -> random.nextBytes(block);
    }
    return new Waveform(block, format, scale);
  }

  private static ByteOrder orderOf(CodeFormat format) {
    return format == CodeFormat.REAL_32_MSB_FIRST ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
  }

  private static Waveform ofVolts(double... volts) {
    ByteBuffer buffer = ByteBuffer.allocate(8 * volts.length).order(ByteOrder.LITTLE_ENDIAN);
    for (double v : volts) {
      buffer.putDouble(v);
    }
    return new Waveform(buffer.array(), CodeFormat.REAL_64_LSB_FIRST, Scale.VOLTS);
  }
}
