package mainsgap.scope;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Map;
import mainsgap.scope.WaveformTransfer.Fetching;
import mainsgap.scpi.ReplyTimeoutException;

/**
 * Reads a record in parts. The width of a code is what the first part's length says; memory is what
 * the record needs, whatever a header claims.
 */
final class BlockReader {
  /** Parts smaller than this are not worth another try. */
  private static final int SMALLEST_PART = 1000;

  private final Exchange exchange;
  private final Fetching how;
  private final Preparing preparing;
  private final String step;
  private int partSamples;

  BlockReader(Exchange exchange, Fetching how, Preparing preparing, String step) {
    this.exchange = exchange;
    this.how = how;
    this.preparing = preparing;
    this.step = step;
    this.partSamples = how.inParts() ? how.chunkSamples() : Integer.MAX_VALUE;
  }

  private static final class Part {
    final byte[] bytes;
    final int samples;

    Part(byte[] bytes, int samples) {
      this.bytes = bytes;
      this.samples = samples;
    }
  }

  /** The whole record: {@code samples} codes of one width in the bounds of {@code layout}. */
  byte[] read(int channel, int samples, CodeLayout layout) {
    Part part = part(channel, 1, samples, new Width(layout.leastBytes(), layout.mostBytes()));
    if (part.samples == samples) {
      return part.bytes;
    }
    int width = part.bytes.length / part.samples;
    byte[] block = Arrays.copyOf(part.bytes, Math.multiplyExact(samples, width));
    for (int taken = part.samples; taken < samples; taken += part.samples) {
      part = part(channel, taken + 1, samples - taken, new Width(width, width));
      System.arraycopy(part.bytes, 0, block, taken * width, part.bytes.length);
    }
    return block;
  }

  /** At most so many samples; asked for again in a smaller part where it does not come in time. */
  private Part part(int channel, int first, int atMost, Width width) {
    while (true) {
      int samples = Math.min(atMost, partSamples);
      try {
        return new Part(ask(channel, first, samples, width), samples);
      } catch (ReplyTimeoutException e) {
        if (!how.inParts() || samples / 2 < SMALLEST_PART) {
          throw Exchange.wrapped(step, e);
        }
        partSamples = samples / 2;
      }
    }
  }

  /** Some instruments send less than they hold once, and all of it when they are asked again. */
  private byte[] ask(int channel, int first, int samples, Width width) {
    Map<Placeholder, Double> values = TemplateValues.part(channel, first, first + samples - 1);
    byte[] block = askOnce(values, samples, width);
    if (!width.fits(block.length, samples)) {
      block = askOnce(values, samples, width);
    }
    if (!width.fits(block.length, samples)) {
      throw new ScopeException(
          step
              + ": the block from sample "
              + first
              + " on has "
              + block.length
              + " bytes, expected "
              + width
              + " for each of "
              + samples
              + " samples: repeat the capture, and check that the profile fits the instrument");
    }
    return block;
  }

  private byte[] askOnce(Map<Placeholder, Double> values, int samples, Width width) {
    exchange.tell(step, how.window(), values);
    preparing.part(values);
    if (how.asText()) {
      return bytes(exchange.askText(step, how.data(), values, samples));
    }
    return exchange.askBlock(
        step, how.data(), values, Math.multiplyExact(samples, width.mostBytes()));
  }

  private static byte[] bytes(double[] numbers) {
    ByteBuffer bytes =
        ByteBuffer.allocate(Math.multiplyExact(numbers.length, Double.BYTES))
            .order(ByteOrder.LITTLE_ENDIAN);
    bytes.asDoubleBuffer().put(numbers);
    return bytes.array();
  }

  /** The bytes that a code may take. */
  private record Width(int leastBytes, int mostBytes) {
    boolean fits(int length, int samples) {
      int bytes = length / samples;
      return length % samples == 0 && bytes >= leastBytes && bytes <= mostBytes;
    }

    @Override
    public String toString() {
      return leastBytes == mostBytes ? "" + mostBytes : leastBytes + " or " + mostBytes;
    }
  }
}
