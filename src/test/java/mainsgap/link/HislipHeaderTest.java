package mainsgap.link;

import static mainsgap.Sentences.assertSays;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.util.HexFormat;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HislipHeaderTest {
  private static final HexFormat HEX = HexFormat.of();

  /**
   * Written by hand from IVI-6.1 2.0 by the authors of another implementation (tridentsx/hislip).
   */
  @ParameterizedTest
  @CsvSource({
    "48530000010047540000000000000007, INITIALIZE, 0x00, 0x01004754, 7",
    "48530100010012340000000000000000, INITIALIZE_RESPONSE, 0x00, 0x01001234, 0",
    "48530101020012340000000000000000, INITIALIZE_RESPONSE, 0x01, 0x02001234, 0",
    "48531100000012340000000000000000, ASYNC_INITIALIZE, 0x00, 0x00001234, 0",
    "48530701ffffff000000000000000004, DATA_END, 0x01, 0xffffff00, 4",
    "48530600ffffffff0000000000000008, DATA, 0x00, 0xffffffff, 8",
    "48530c01ffffff020000000000000000, TRIGGER, 0x01, 0xffffff02, 0",
    "4853060000000000ffffffffffffffff, DATA, 0x00, 0x00000000, -1",
    "48531501fffffefe0000000000000000, ASYNC_STATUS_QUERY, 0x01, 0xfffffefe, 0",
    "48531650000000000000000000000000, ASYNC_STATUS_RESPONSE, 0x50, 0x00000000, 0",
    "48531440000000000000000000000000, ASYNC_SERVICE_REQUEST, 0x40, 0x00000000, 0",
    "48531300000000000000000000000000, ASYNC_DEVICE_CLEAR, 0x00, 0x00000000, 0",
    "48531700000000000000000000000000, ASYNC_DEVICE_CLEAR_ACKNOWLEDGE, 0x00, 0x00000000, 0",
    "48530800000000000000000000000000, DEVICE_CLEAR_COMPLETE, 0x00, 0x00000000, 0",
    "48530900000000000000000000000000, DEVICE_CLEAR_ACKNOWLEDGE, 0x00, 0x00000000, 0",
    "48530201000000000000000000000000, FATAL_ERROR, 0x01, 0x00000000, 0",
    "48530304000000000000000000000000, ERROR, 0x04, 0x00000000, 0",
    "4853040100001388000000000000000a, ASYNC_LOCK, 0x01, 0x00001388, 10",
    "48530d00ffffff000000000000000000, INTERRUPTED, 0x00, 0xffffff00, 0",
    "48530e00000000000000000000000000, ASYNC_INTERRUPTED, 0x00, 0x00000000, 0",
    "48530f00000000000000000000000008, ASYNC_MAXIMUM_MESSAGE_SIZE, 0x00, 0x00000000, 8",
    "48531000000000000000000000000008, ASYNC_MAXIMUM_MESSAGE_SIZE_RESPONSE, 0x00, 0x00000000, 8",
  })
  void theBytesOfAHeaderAreThoseOfTheStandard(
      String hex, HislipType type, String control, String parameter, long payloadBytes) {
    HislipHeader header =
        HislipHeader.of(
            type, Integer.decode(control), (int) (long) Long.decode(parameter), payloadBytes);
    ByteBuffer bytes = ByteBuffer.allocate(HislipHeader.BYTES);
    header.putTo(bytes);
    assertEquals(hex, HEX.formatHex(bytes.array()));
    assertEquals(header, HislipHeader.from(ByteBuffer.wrap(HEX.parseHex(hex))));
    assertEquals(Optional.of(type), header.type());
  }

  @Test
  void everyTypeHasTheNumberOfTable4() {
    assertEquals(26, HislipType.values().length);
    for (int code = 0; code < 26; code++) {
      assertEquals(code, HislipType.of(code).orElseThrow().code());
    }
  }

  /** Types of version 2.0, reserved ones and those of vendors. */
  @ParameterizedTest
  @CsvSource({"26", "38", "127", "128", "255"})
  void anUnknownTypeIsKnownAsUnknown(int code) {
    assertEquals(Optional.empty(), new HislipHeader(code, 0, 0, 0).type());
  }

  @Test
  void whatDoesNotBeginAsAHeaderIsRefused() {
    ByteBuffer http =
        ByteBuffer.wrap(
            "HTTP/1.1 400 Bad Request".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    LinkException e = assertThrows(LinkException.class, () -> HislipHeader.from(http));
    assertSays(e, "a message begins with 4854 where HiSLIP has 4853");
  }
}
