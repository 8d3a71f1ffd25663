package mainsgap.link;

/** The endpoints of a USBTMC interface. Every call ends with its time-out. */
interface UsbPipes {

  /** What the interface is. */
  UsbtmcInterface kind();

  /** Sends a transfer to the bulk endpoint; gives how many of its bytes were taken. */
  int out(byte[] transfer, int timeoutMillis) throws UsbFault;

  /**
   * Takes packets from the bulk endpoint until {@code bytes} or a short packet came.
   *
   * @return how many bytes came, which may be 0; a time-out behind some of them is none
   */
  int in(byte[] into, int bytes, int timeoutMillis) throws UsbFault;

  /** Takes a packet from the interrupt endpoint. */
  int interrupt(byte[] into, int timeoutMillis) throws UsbFault;

  /** A control request to the interface; gives how many bytes came back. */
  int control(int request, int value, byte[] answer, int timeoutMillis) throws UsbFault;

  /** Lets the bulk endpoint that leads out go on after a halt. */
  void clearHaltOut() throws UsbFault;

  /** Never throws. */
  void close();
}
