package mainsgap.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import mainsgap.link.RpcMessages.Procedure;
import org.junit.jupiter.api.Test;

/**
 * Calls byte for byte as an independent server took them in a recorded session (link 0xC9, time-out
 * 2 s); their layout is that of VXI-11 Rev 1.0, C.1, and of RFC 5531 and RFC 1833.
 */
class Vxi11CallsTest {
  private static final int LINK = 0xC9;
  private static final int TIMEOUT_MILLIS = 2000;

  @Test
  void asksThePortmapperForTheCoreChannel() {
    assertEquals(
        "80000038 00000001 00000000 00000002 000186a0 00000002 00000003 00000000 00000000"
            + " 00000000 00000000 000607af 00000001 00000006 00000000",
        words(
            RpcMessages.record(
                1,
                Portmapper.GET_PORT,
                Portmapper.arguments(0x0607AF, 1),
                Portmapper.ARGUMENT_BYTES)));
  }

  @Test
  void createsALink() {
    assertEquals(
        "80000040 00000002 00000000 00000002 000607af 00000001 0000000a 00000000 00000000"
            + " 00000000 00000000 00001234 00000000 00000000 00000005 696e7374 30000000",
        record(2, Vxi11Calls.CREATE_LINK, Vxi11Calls.createLink(0x1234, "inst0")));
  }

  @Test
  void writesAMessageAndItsEnd() {
    byte[] message = "*IDN?\n".getBytes(StandardCharsets.US_ASCII);
    assertEquals(
        "80000044 00000003 00000000 00000002 000607af 00000001 0000000b 00000000 00000000"
            + " 00000000 00000000 000000c9 000007d0 00000000 00000008 00000006 2a49444e 3f0a0000",
        record(
            3,
            Vxi11Calls.DEVICE_WRITE,
            Vxi11Calls.write(LINK, TIMEOUT_MILLIS, Vxi11Calls.FLAG_END, message)));
  }

  @Test
  void reads() {
    assertEquals(
        "80000040 00000004 00000000 00000002 000607af 00000001 0000000c 00000000 00000000"
            + " 00000000 00000000 000000c9 00000400 000007d0 00000000 00000000 00000000",
        record(4, Vxi11Calls.DEVICE_READ, Vxi11Calls.read(LINK, 1024, TIMEOUT_MILLIS)));
  }

  @Test
  void asksForTheStatusByteWithTheTimeOutLast() {
    assertEquals(
        "80000038 00000005 00000000 00000002 000607af 00000001 0000000d 00000000 00000000"
            + " 00000000 00000000 000000c9 00000000 00000000 000007d0",
        record(5, Vxi11Calls.DEVICE_READ_STATUS, Vxi11Calls.generic(LINK, TIMEOUT_MILLIS)));
  }

  @Test
  void destroysTheLink() {
    assertEquals(
        "8000002c 00000006 00000000 00000002 000607af 00000001 00000017 00000000 00000000"
            + " 00000000 00000000 000000c9",
        record(6, Vxi11Calls.DESTROY_LINK, Vxi11Calls.link(LINK)));
  }

  /** No recording has these two: numbers and arguments are those of VXI-11 table C.1. */
  @Test
  void clearsAndAborts() {
    assertEquals(
        "80000038 00000007 00000000 00000002 000607af 00000001 0000000f 00000000 00000000"
            + " 00000000 00000000 000000c9 00000000 00000000 000007d0",
        record(7, Vxi11Calls.DEVICE_CLEAR, Vxi11Calls.generic(LINK, TIMEOUT_MILLIS)));
    assertEquals(
        "8000002c 00000008 00000000 00000002 000607b0 00000001 00000001 00000000 00000000"
            + " 00000000 00000000 000000c9",
        record(8, Vxi11Calls.DEVICE_ABORT, Vxi11Calls.link(LINK)));
  }

  private static String record(int xid, Procedure procedure, Vxi11Calls.Arguments arguments) {
    return words(RpcMessages.record(xid, procedure, arguments.xdr(), arguments.bytes()));
  }

  private static String words(byte[] bytes) {
    return HexFormat.of().formatHex(bytes).replaceAll("(.{8})(?=.)", "$1 ");
  }
}
