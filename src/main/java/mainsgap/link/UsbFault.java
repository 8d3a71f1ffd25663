package mainsgap.link;

/** What went wrong on the way to or from a USB instrument; the link makes a sentence of it. */
final class UsbFault extends Exception {
  private static final long serialVersionUID = 1L;

  /** What the link does about it. */
  enum Kind {
    /** Nothing moved in the time allowed. */
    TIMEOUT,
    /** The instrument is no longer there. */
    GONE,
    /** The instrument refuses until it is cleared. */
    STALLED,
    /** The instrument, or the system, has no such request. */
    UNSUPPORTED,
    /** Anything else. */
    OTHER
  }

  private final Kind kind;

  UsbFault(Kind kind, String what) {
    super(what);
    this.kind = kind;
  }

  Kind kind() {
    return kind;
  }
}
