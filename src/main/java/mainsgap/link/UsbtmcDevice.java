package mainsgap.link;

import java.util.OptionalInt;

/**
 * A USBTMC instrument that was opened, one message at a time. One thread at a time; every call ends
 * soon after its time-out.
 */
interface UsbtmcDevice {

  /** Sends a whole message. */
  void send(byte[] message, int timeoutMillis) throws UsbFault;

  /**
   * Asks for as much of the reply as {@code into} holds, which may be nothing, and waits for it.
   *
   * @throws UsbFault of the kind TIMEOUT where nothing came; then, if {@link #resumes()}, the next
   *     call goes on waiting for the same answer
   */
  Received receive(byte[] into, int timeoutMillis) throws UsbFault;

  /** Whether a wait for the reply may be cut into slices. */
  boolean resumes();

  /** The status byte; empty where the instrument has no such request. */
  OptionalInt statusByte(int timeoutMillis) throws UsbFault;

  /** Device clear. */
  void clear(int timeoutMillis) throws UsbFault;

  /** Never throws. */
  void close();
}
