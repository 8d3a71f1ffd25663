package mainsgap.link;

/** What the two error messages of HiSLIP can say (IVI-6.1 tables 14 and 16). */
public enum HislipFault {
  /** Fatal. */
  UNIDENTIFIED_FATAL(true, 0, "an error that it does not name"),
  /** Fatal. */
  POOR_HEADER(true, 1, "a poorly formed message header"),
  /** Fatal. */
  NOT_BOTH_CHANNELS(true, 2, "use of the connection before both channels were open"),
  /** Fatal. */
  POOR_INITIALIZATION(true, 3, "a wrong order of opening messages"),
  /** Fatal. */
  TOO_MANY_CLIENTS(true, 4, "too many clients: close other programs that hold the instrument"),
  /** Fatal. */
  NOT_SECURE(true, 5, "a secure connection that failed"),
  /** Not fatal. */
  UNIDENTIFIED(false, 0, "an error that it does not name"),
  /** Not fatal. */
  UNKNOWN_TYPE(false, 1, "an unknown message type"),
  /** Not fatal. */
  UNKNOWN_CONTROL(false, 2, "an unknown control code"),
  /** Not fatal. */
  UNKNOWN_VENDOR_MESSAGE(false, 3, "an unknown message of a vendor"),
  /** Not fatal. */
  TOO_LARGE(false, 4, "a message that is too large"),
  /** Not fatal. */
  NOT_AUTHENTICATED(false, 5, "an authentication that failed");

  private final boolean fatal;
  private final int code;
  private final String words;

  HislipFault(boolean fatal, int code, String words) {
    this.fatal = fatal;
    this.code = code;
    this.words = words;
  }

  /** The message that tells it, its text {@code payloadBytes} long. */
  public HislipHeader header(int payloadBytes) {
    HislipType type = fatal ? HislipType.FATAL_ERROR : HislipType.ERROR;
    return HislipHeader.of(type, code, 0, payloadBytes);
  }

  /** What a FatalError or Error says, for a sentence; an unknown code is told as such. */
  static String told(HislipHeader header, String text) {
    boolean fatal = header.is(HislipType.FATAL_ERROR);
    String words = "error " + header.control() + ", which IVI-6.1 does not know";
    for (HislipFault fault : values()) {
      if (fault.fatal == fatal && fault.code == header.control()) {
        words = fault.words;
      }
    }
    return text.isBlank() ? words : words + " ('" + text.strip() + "')";
  }
}
