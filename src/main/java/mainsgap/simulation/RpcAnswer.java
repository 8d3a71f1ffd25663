package mainsgap.simulation;

import java.nio.ByteBuffer;

/** What a server answers to a call: how it took it, and the results in XDR. */
final class RpcAnswer {
  private static final int HEADER_BYTES = 28;
  private static final int LAST_FRAGMENT = 1 << 31;
  private static final int REPLY = 1;
  private static final int SUCCESS = 0;

  private final ByteBuffer record;

  private RpcAnswer(int resultBytes) {
    record = ByteBuffer.allocate(HEADER_BYTES + resultBytes).position(Integer.BYTES);
  }

  /** How a call is taken that is not carried out: RFC 5531, 9. */
  enum Refusal {
    PROGRAM_UNAVAILABLE(1),
    PROCEDURE_UNAVAILABLE(3);

    private final int status;

    Refusal(int status) {
      this.status = status;
    }
  }

  /** Carried out, with numbers for results. */
  static RpcAnswer numbers(RpcCall call, int... numbers) {
    RpcAnswer answer = accepted(call, SUCCESS, Integer.BYTES * numbers.length);
    for (int number : numbers) {
      answer.record.putInt(number);
    }
    return answer;
  }

  /** Carried out, with two numbers and then bytes for results. */
  static RpcAnswer data(RpcCall call, int first, int second, byte[] from, int offset, int bytes) {
    RpcAnswer answer = accepted(call, SUCCESS, 3 * Integer.BYTES + bytes + (-bytes & 3));
    answer.record.putInt(first).putInt(second).putInt(bytes).put(from, offset, bytes);
    answer.record.position(answer.record.limit());
    return answer;
  }

  static RpcAnswer refused(RpcCall call, Refusal refusal) {
    return accepted(call, refusal.status, 0);
  }

  /** The program is there in another version. */
  static RpcAnswer otherVersion(RpcCall call, int version) {
    RpcAnswer answer = accepted(call, 2, 2 * Integer.BYTES);
    answer.record.putInt(version).putInt(version);
    return answer;
  }

  /** The client speaks another version of RPC than 2. */
  static RpcAnswer otherRpc(RpcCall call) {
    RpcAnswer answer = new RpcAnswer(0);
    answer.record.putInt(call.xid()).putInt(REPLY).putInt(1).putInt(0).putInt(2).putInt(2);
    return answer;
  }

  private static RpcAnswer accepted(RpcCall call, int status, int resultBytes) {
    RpcAnswer answer = new RpcAnswer(resultBytes);
    answer.record.putInt(call.xid()).putInt(REPLY).putInt(0).putInt(0).putInt(0).putInt(status);
    return answer;
  }

  /** The whole record with its mark, one fragment. */
  byte[] bytes() {
    record.putInt(0, LAST_FRAGMENT | (record.limit() - Integer.BYTES));
    return record.array();
  }
}
