package mainsgap.link;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import mainsgap.link.FakeUsbInstrument.Part;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;

/** An instrument that is a fake, reached by our own framing. */
public final class BulkUsbtmcPeer implements LinkPeer {
  private static final ResourceName.Usb NAME = new ResourceName.Usb(0, 0x1234, 0x125, "SN1", 0);

  private final Map<String, List<Part>> answers = new ConcurrentHashMap<>();
  private final Set<String> unplugging = ConcurrentHashMap.newKeySet();

  @Override
  public Set<Manner> manners() {
    return EnumSet.allOf(Manner.class);
  }

  @Override
  public Link open(Deadline connectBy) {
    FakeUsbInstrument instrument = new FakeUsbInstrument();
    instrument.instrument =
        message -> {
          instrument.goneWhenEmpty = unplugging.contains(message);
          return answers.getOrDefault(message, List.of());
        };
    BulkUsbtmc device = new BulkUsbtmc(instrument, UsbtmcLink.BUFFER_BYTES, Clock.system());
    return new UsbtmcLink(NAME, device, Clock.system());
  }

  @Override
  public void answer(String message, Manner manner, byte[] reply) {
    byte[] half = Arrays.copyOf(reply, reply.length / 2);
    List<Part> parts =
        switch (manner) {
          case WHOLE -> List.of(new Part(reply, true));
          case ONE_BYTE_AT_A_TIME ->
              IntStream.range(0, reply.length)
                  .mapToObj(i -> new Part(new byte[] {reply[i]}, i == reply.length - 1))
                  .toList();
          case END_APART -> List.of(new Part(reply, false), new Part(new byte[0], true));
          case STALLS_HALFWAY, CLOSES_HALFWAY -> List.of(new Part(half, false));
          case WRONG_FRAME -> List.of(new Part(reply, true, BulkUsbtmcPeer::ofAnotherKind));
          case FRAME_CLAIMS_MORE -> List.of(new Part(reply, true, BulkUsbtmcPeer::claimingMore));
        };
    answers.put(message + "\n", parts);
    if (manner == Manner.CLOSES_HALFWAY) {
      unplugging.add(message + "\n");
    }
  }

  @Override
  public void close() {}

  private static byte[] ofAnotherKind(byte[] frame) {
    frame[0] = 127;
    return frame;
  }

  /** 50,000 bytes more. */
  private static byte[] claimingMore(byte[] frame) {
    int claims = (frame[4] & 0xFF) + ((frame[5] & 0xFF) << 8) + 50_000;
    frame[4] = (byte) claims;
    frame[5] = (byte) (claims >> 8);
    return frame;
  }
}
