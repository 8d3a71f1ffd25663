package mainsgap.link;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import mainsgap.waiting.Deadline;

/**
 * How a HiSLIP session begins (IVI-6.1 6.1 and 6.10): two connections, and what each side takes.
 */
final class HislipOpening {
  private static final int VERSION_1_0 = 0x0100;

  /** Two letters that name who made the client; free for all to choose. */
  private static final int CLIENT = 'M' << 8 | 'G';

  private static final int ENCRYPTION_MANDATORY_BIT = 1;
  private static final int ENCRYPTION_FOLLOWS_BIT = 2;

  /** What this side takes in one message; more would do, since it is handed on as it comes. */
  private static final long MOST_MESSAGE_BYTES = 0x100000;

  private final ResourceName.Hislip resource;
  private final Deadline deadline;

  private HislipOpening(ResourceName.Hislip resource, Deadline deadline) {
    this.resource = resource;
    this.deadline = deadline;
  }

  /** Opens a session. */
  static HislipSession open(ResourceName.Hislip resource, Deadline deadline) {
    return new HislipOpening(resource, deadline).open();
  }

  private HislipSession open() {
    HislipChannel synchronous = connect();
    try {
      HislipHeader welcome = initialize(synchronous);
      HislipChannel asynchronous = connect();
      HislipChannels channels = new HislipChannels(resource, synchronous, asynchronous);
      try {
        initializeAsynchronous(channels, welcome.parameter() & 0xFFFF);
        int most = mostPayloadBytes(channels);
        return new HislipSession(resource, channels, most, welcome.controlBit(0));
      } catch (LinkException e) {
        asynchronous.drop();
        throw e;
      }
    } catch (LinkException e) {
      synchronous.drop();
      throw e;
    }
  }

  private HislipChannel connect() {
    return new HislipChannel(
        resource, TcpStream.connect(resource, resource.host(), resource.port(), deadline));
  }

  private HislipHeader initialize(HislipChannel synchronous) {
    ByteBuffer device = StandardCharsets.US_ASCII.encode(resource.deviceName());
    synchronous.send(HislipType.INITIALIZE, 0, VERSION_1_0 << 16 | CLIENT, device, deadline);
    HislipChannels alone = new HislipChannels(resource, synchronous, synchronous);
    HislipHeader welcome = answer(alone, synchronous, HislipType.INITIALIZE_RESPONSE);
    if (welcome.controlBit(ENCRYPTION_MANDATORY_BIT)
        || welcome.controlBit(ENCRYPTION_FOLLOWS_BIT)) {
      throw new LinkException(
          resource
              + " wants an encrypted connection, which is not supported: allow an open one in the"
              + " instrument's settings, or use another link");
    }
    return welcome;
  }

  private void initializeAsynchronous(HislipChannels channels, int sessionNumber) {
    channels.asynchronous().send(HislipType.ASYNC_INITIALIZE, 0, sessionNumber, deadline);
    answer(channels, channels.asynchronous(), HislipType.ASYNC_INITIALIZE_RESPONSE);
  }

  /** IVI-6.1 6.10; whether the header counts is not said there in one place, so it does here. */
  private int mostPayloadBytes(HislipChannels channels) {
    HislipChannel asynchronous = channels.asynchronous();
    ByteBuffer most = ByteBuffer.allocate(Long.BYTES).putLong(0, MOST_MESSAGE_BYTES);
    asynchronous.send(HislipType.ASYNC_MAXIMUM_MESSAGE_SIZE, 0, 0, most, deadline);
    HislipHeader header =
        answer(channels, asynchronous, HislipType.ASYNC_MAXIMUM_MESSAGE_SIZE_RESPONSE);
    if (header.payloadBytes() != Long.BYTES) {
      throw channels.outOfPlace(header, "one with a size of 8 bytes");
    }
    ByteBuffer size = ByteBuffer.allocate(Long.BYTES);
    while (size.hasRemaining()) {
      asynchronous.readPayload(size, deadline);
    }
    long bytes = size.getLong(0);
    long clipped = bytes < 0 ? Integer.MAX_VALUE : Math.min(bytes, Integer.MAX_VALUE);
    return (int) Math.max(1, clipped - HislipHeader.BYTES);
  }

  private HislipHeader answer(HislipChannels channels, HislipChannel channel, HislipType awaited) {
    HislipHeader answer = channel.next(deadline);
    if (!answer.is(awaited)) {
      channels.requireNoError(answer, channel, deadline);
      throw channels.outOfPlace(answer, awaited.name());
    }
    return answer;
  }
}
