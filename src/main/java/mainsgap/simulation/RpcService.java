package mainsgap.simulation;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.util.Optional;

/** Takes the calls of one client to one program, one at a time in their order (rule B.2.2). */
final class RpcService {
  private static final int RPC_VERSION = 2;

  private final int program;
  private final int version;
  private final Procedures procedures;

  /** What a program does. */
  @FunctionalInterface
  interface Procedures {
    /** Carries a call out; empty where there is no such procedure. */
    Optional<RpcAnswer> answer(RpcCall call) throws IOException;
  }

  RpcService(int program, int version, Procedures procedures) {
    this.program = program;
    this.version = version;
    this.procedures = procedures;
  }

  /** Answers until the client goes. */
  void serve(Socket client) throws IOException {
    DataInputStream in = new DataInputStream(new BufferedInputStream(client.getInputStream()));
    OutputStream out = client.getOutputStream();
    try {
      while (true) {
        out.write(answer(RpcCall.from(in)).bytes());
      }
    } catch (EOFException e) {
      // the client has gone
    }
  }

  private RpcAnswer answer(RpcCall call) throws IOException {
    if (call.rpcVersion() != RPC_VERSION) {
      return RpcAnswer.otherRpc(call);
    }
    if (call.program() != program) {
      return RpcAnswer.refused(call, RpcAnswer.Refusal.PROGRAM_UNAVAILABLE);
    }
    if (call.version() != version) {
      return RpcAnswer.otherVersion(call, version);
    }
    boolean ping = call.procedure() == 0;
    return ping
        ? RpcAnswer.numbers(call)
        : procedures
            .answer(call)
            .orElseGet(() -> RpcAnswer.refused(call, RpcAnswer.Refusal.PROCEDURE_UNAVAILABLE));
  }
}
