package mainsgap.scpi;

import java.time.Duration;

/**
 * How to talk to one instrument.
 *
 * @param connectTimeout for opening the link
 * @param replyTimeout for a line, and for the longest silence within a block
 * @param commandGap the least time from one message to the next, for instruments that need a rest
 * @param terminator ends each message: NL, or CR NL
 * @param longestLineBytes a longer line is refused
 */
public record ScpiOptions(
    Duration connectTimeout,
    Duration replyTimeout,
    Duration commandGap,
    String terminator,
    int longestLineBytes) {

  /** Checks the values. */
  public ScpiOptions {
    requirePositive(connectTimeout, "connect time-out");
    requirePositive(replyTimeout, "reply time-out");
    if (commandGap.isNegative()) {
      throw new IllegalArgumentException("the command gap is negative: " + commandGap);
    }
    if (!terminator.equals("\n") && !terminator.equals("\r\n")) {
      throw new IllegalArgumentException("a message ends with NL or CR NL");
    }
    if (longestLineBytes < 1) {
      throw new IllegalArgumentException("the longest line has no byte: " + longestLineBytes);
    }
  }

  /** What fits most instruments on a local network. */
  public static ScpiOptions standard() {
    return new ScpiOptions(
        Duration.ofSeconds(2), Duration.ofSeconds(5), Duration.ZERO, "\n", 64 * 1024);
  }

  /** For a device clear: it may have to connect anew, or wait for an instrument that is busy. */
  public Duration clearTimeout() {
    return connectTimeout.compareTo(replyTimeout) > 0 ? connectTimeout : replyTimeout;
  }

  /** The same with another time-out for replies. */
  public ScpiOptions withReplyTimeout(Duration timeout) {
    return new ScpiOptions(connectTimeout, timeout, commandGap, terminator, longestLineBytes);
  }

  /** The same with another gap between messages. */
  public ScpiOptions withCommandGap(Duration gap) {
    return new ScpiOptions(connectTimeout, replyTimeout, gap, terminator, longestLineBytes);
  }

  private static void requirePositive(Duration duration, String what) {
    if (duration.isNegative() || duration.isZero()) {
      throw new IllegalArgumentException("the " + what + " must be longer than 0: " + duration);
    }
  }
}
