package mainsgap.link;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import mainsgap.link.UsbtmcKernel.Failed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The real system calls, on files: error numbers are those of Linux. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "the calls are those of Linux")
class LinuxUsbtmcTest {
  private static final int ENOENT = 2;
  private static final int EBADF = 9;

  /** Bytes waiting to be read, from {@code asm-generic/ioctls.h}. */
  private static final long FIONREAD = 0x541B;

  private final LinuxUsbtmc kernel = LinuxUsbtmc.load();

  @Test
  void bytesAreWrittenAndRead(@TempDir Path folder) throws IOException, Failed {
    Path path = Files.createFile(folder.resolve("file"));
    int file = kernel.open(path.toString());
    assertEquals(3, kernel.write(file, new byte[] {1, 2, 3}));
    kernel.close(file);
    assertArrayEquals(new byte[] {1, 2, 3}, Files.readAllBytes(path));
    int again = kernel.open(path.toString());
    byte[] into = new byte[10];
    assertEquals(3, kernel.read(again, into));
    assertArrayEquals(new byte[] {1, 2, 3}, Arrays.copyOf(into, 3));
    kernel.close(again);
  }

  @Test
  void aRequestGivesItsValueBack(@TempDir Path folder) throws IOException, Failed {
    Path path = folder.resolve("file");
    Files.write(path, new byte[300]);
    int file = kernel.open(path.toString());
    byte[] waiting = new byte[Integer.BYTES];
    kernel.ioctl(file, FIONREAD, waiting);
    assertEquals(300, ByteBuffer.wrap(waiting).order(ByteOrder.nativeOrder()).getInt());
    kernel.close(file);
  }

  @Test
  void whatIsNoInstrumentKnowsNoneOfTheRequests() throws Failed {
    int file = kernel.open("/dev/null");
    for (long request :
        new long[] {
          KernelUsbtmc.CLEAR,
          KernelUsbtmc.SET_TIMEOUT,
          KernelUsbtmc.READ_STB,
          KernelUsbtmc.MSG_IN_ATTR
        }) {
      Failed failed =
          assertThrows(Failed.class, () -> kernel.ioctl(file, request, new byte[Integer.BYTES]));
      assertEquals(FakeUsbtmcKernel.ENOTTY, failed.errno());
    }
    kernel.close(file);
  }

  @Test
  void failuresCarryTheNumberOfTheSystem() {
    assertEquals(ENOENT, assertThrows(Failed.class, () -> kernel.open("/dev/usbtmc-none")).errno());
    assertEquals(EBADF, assertThrows(Failed.class, () -> kernel.read(-1, new byte[1])).errno());
    assertEquals(EBADF, assertThrows(Failed.class, () -> kernel.write(-1, new byte[1])).errno());
    assertEquals(EBADF, assertThrows(Failed.class, () -> kernel.close(-1)).errno());
  }
}
