package mainsgap.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Descriptors put together after USB 2.0, tables 9-10, 9-12 and 9-13. */
class UsbtmcInterfaceTest {
  private static final String CONFIGURATION = "09 02 4600 02 01 00 C0 32";
  private static final String STORAGE = "09 04 00 00 02 08 06 50 00";
  private static final String STORAGE_OUT = "07 05 03 02 0002 00";
  private static final String STORAGE_IN = "07 05 84 02 0002 00";
  private static final String MEASUREMENT = "09 04 01 00 03 FE 03 01 00";
  private static final String BULK_OUT = "07 05 01 02 4000 00";
  private static final String BULK_IN = "07 05 82 02 0002 00";
  private static final String INTERRUPT_IN = "07 05 83 03 0800 0A";

  @Test
  void itIsFoundAmongOthersWithItsEndpoints() {
    assertEquals(
        Optional.of(new UsbtmcInterface(1, true, 0x01, 0x82, 0x83, 512)),
        find(
            1,
            CONFIGURATION,
            STORAGE,
            STORAGE_OUT,
            STORAGE_IN,
            MEASUREMENT,
            BULK_OUT,
            BULK_IN,
            INTERRUPT_IN));
  }

  @Test
  void whatFollowsItDoesNotMixIn() {
    assertEquals(
        Optional.of(new UsbtmcInterface(1, true, 0x01, 0x82, 0, 512)),
        find(1, CONFIGURATION, MEASUREMENT, BULK_OUT, BULK_IN, STORAGE, STORAGE_OUT, STORAGE_IN));
  }

  @Test
  void anInterfaceOfAnotherKindIsNone() {
    assertEquals(Optional.empty(), find(0, CONFIGURATION, STORAGE, STORAGE_OUT, STORAGE_IN));
  }

  @Test
  void anInterfaceWithoutBothBulkEndpointsIsNone() {
    assertEquals(Optional.empty(), find(1, CONFIGURATION, MEASUREMENT, BULK_OUT, INTERRUPT_IN));
  }

  @Test
  void aDescriptorThatIsCutOffOrLiesIsNoneAndEndsTheSearch() {
    assertEquals(Optional.empty(), find(1, CONFIGURATION, MEASUREMENT, BULK_OUT, "07 05 82"));
    assertEquals(Optional.empty(), find(1, CONFIGURATION, "00 04 01 00", MEASUREMENT));
    assertEquals(Optional.empty(), UsbtmcInterface.find(new byte[0], 0, 1));
  }

  private static Optional<UsbtmcInterface> find(int number, String... descriptors) {
    byte[] all = HexFormat.of().parseHex(String.join("", descriptors).replace(" ", ""));
    return UsbtmcInterface.find(Arrays.copyOf(all, 256), all.length, number);
  }
}
