package mainsgap.link;

/** The numbers of the messages that a client sends (IVI-6.1 3.1.2): up by two, around 32 bits. */
final class HislipMessageIds {
  /** Stands where the server cannot say which message it answers. */
  static final int UNKNOWN = 0xFFFFFFFF;

  private static final int FIRST = 0xFFFFFF00;
  private static final int STEP = 2;

  private int last = FIRST - STEP;

  /** The number of the message to be sent now. */
  int next() {
    last += STEP;
    return last;
  }

  /** The number of the message sent last; two below the first where none was. */
  int last() {
    return last;
  }

  /** A session begins, or was cleared. */
  void reset() {
    last = FIRST - STEP;
  }
}
