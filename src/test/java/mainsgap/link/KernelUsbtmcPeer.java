package mainsgap.link;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import mainsgap.link.FakeUsbtmcKernel.Transfer;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import mainsgap.waiting.ManualClock;

/** An instrument behind a fake of the Linux driver, which itself refuses frames that lie. */
public final class KernelUsbtmcPeer implements LinkPeer {
  private static final ResourceName.Usb NAME = new ResourceName.Usb(0, 0x1234, 0x125, "SN1", 0);

  private final Map<String, List<Transfer>> answers = new ConcurrentHashMap<>();
  private final Set<String> unplugging = ConcurrentHashMap.newKeySet();

  @Override
  public Set<Manner> manners() {
    return EnumSet.complementOf(EnumSet.of(Manner.WRONG_FRAME, Manner.FRAME_CLAIMS_MORE));
  }

  @Override
  public Link open(Deadline connectBy) {
    FakeUsbtmcKernel kernel = new FakeUsbtmcKernel(new ManualClock());
    kernel.instrument =
        message -> {
          kernel.errnoWhenEmpty =
              unplugging.contains(message) ? FakeUsbtmcKernel.ENODEV : FakeUsbtmcKernel.ETIMEDOUT;
          return answers.getOrDefault(message, List.of());
        };
    KernelUsbtmc device = KernelUsbtmc.open(kernel, Path.of("/dev/usbtmc0"), NAME);
    return new UsbtmcLink(NAME, device, Clock.system());
  }

  @Override
  public void answer(String message, Manner manner, byte[] reply) {
    byte[] half = Arrays.copyOf(reply, reply.length / 2);
    List<Transfer> transfers = new ArrayList<>();
    switch (manner) {
      case WHOLE -> transfers.addAll(FakeUsbtmcKernel.inPieces(reply, 64 * 1024));
      case ONE_BYTE_AT_A_TIME -> transfers.addAll(FakeUsbtmcKernel.inPieces(reply, 1));
      case END_APART -> {
        transfers.add(new Transfer(reply, false));
        transfers.add(new Transfer(new byte[0], true));
      }
      case STALLS_HALFWAY, CLOSES_HALFWAY -> transfers.add(new Transfer(half, false));
      default -> throw new IllegalArgumentException("the driver lets no " + manner + " through");
    }
    answers.put(message + "\n", transfers);
    if (manner == Manner.CLOSES_HALFWAY) {
      unplugging.add(message + "\n");
    }
  }

  @Override
  public void close() {}
}
