package mainsgap.link;

import java.util.Arrays;

/** What an instrument answers to a call that it did not carry out: VXI-11 Rev 1.0, table B.2. */
enum Vxi11Error {
  NONE(0, "all is well"),
  SYNTAX(1, "it does not understand the call: update its firmware, or use its raw socket"),
  NOT_ACCESSIBLE(
      3,
      "it has no such device, or another program holds it: check the device name (the first is"
          + " inst0), and close other programs"),
  INVALID_LINK(4, "it has given up the link: connect again"),
  PARAMETER(5, "it refuses a parameter of the call: use its raw socket"),
  NO_CHANNEL(6, "a channel that the call needs was not set up: connect again"),
  NOT_SUPPORTED(8, "it does not support the call: use another link, such as its raw socket"),
  OUT_OF_RESOURCES(
      9,
      "it has no room for another link: close other programs; links that were left behind go when"
          + " it is switched off and on"),
  LOCKED(11, "another program has locked it: unlock or close that one"),
  NO_LOCK(12, "it holds no lock that could be freed: connect again"),
  TIMED_OUT(15, "it did not manage in the time allowed"),
  IO(17, "it failed to pass the data on: check the instrument, and try again"),
  INVALID_ADDRESS(21, "the device name is no address that it knows: check the device name"),
  ABORTED(23, "the call was aborted: try again"),
  CHANNEL_EXISTS(29, "the channel exists already: connect again"),
  UNKNOWN(-1, "VXI-11 does not say what that means: see the instrument's manual");

  private final int code;
  private final String meaning;

  Vxi11Error(int code, String meaning) {
    this.code = code;
    this.meaning = meaning;
  }

  static Vxi11Error of(int code) {
    return Arrays.stream(values()).filter(error -> error.code == code).findFirst().orElse(UNKNOWN);
  }

  /** Returns where the call was carried out; throws what its caller can act on. */
  static void check(int code, ResourceName resource, String attempt) {
    switch (of(code)) {
      case NONE -> {}
      case TIMED_OUT -> throw new LinkTimeoutException(sentence(code, resource, attempt));
      case INVALID_LINK -> throw new LinkClosedException(sentence(code, resource, attempt));
      default -> throw new LinkException(sentence(code, resource, attempt));
    }
  }

  private static String sentence(int code, ResourceName resource, String attempt) {
    return resource + ", asked to " + attempt + ", answers error " + code + ": " + of(code).meaning;
  }
}
