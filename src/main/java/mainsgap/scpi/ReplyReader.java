package mainsgap.scpi;

import static mainsgap.scpi.ReplyStream.END;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import mainsgap.link.Link;
import mainsgap.link.LinkClosedException;
import mainsgap.link.LinkTimeoutException;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Takes replies apart: lines, and blocks by their count. Owned by one instrument's thread. */
final class ReplyReader {
  private static final Logger LOG = LoggerFactory.getLogger(ReplyReader.class);
  private static final int NL = '\n';

  /** Instruments that repeat the header before a block use less; more is not a block. */
  private static final int LONGEST_PREFIX = 256;

  /** What instruments were seen to add behind a reply; more means that its count was wrong. */
  private static final int LONGEST_TAIL = 16;

  private static final Duration TAIL_SILENCE = Duration.ofMillis(100);

  private final Link link;
  private final ScpiOptions options;
  private final Clock clock;
  private final ReplyStream stream;
  private boolean newLineOwed;

  ReplyReader(Link link, ScpiOptions options, Clock clock) {
    this.link = link;
    this.options = options;
    this.clock = clock;
    this.stream = new ReplyStream(link, options.replyTimeout(), clock);
  }

  /** The next byte belongs to a new reply. */
  void begin() {
    stream.begin();
  }

  /** The link was cleared: nothing of an earlier reply can come any more. */
  void cleared() {
    stream.begin();
    newLineOwed = false;
  }

  /** How far the last reply came, for a sentence. */
  String progress() {
    return stream.progress();
  }

  String line() {
    return line(options.longestLineBytes(), patience());
  }

  /** A line whose length was planned, and which takes its time. */
  String longLine(int atMostBytes) {
    return line(atMostBytes, deadlineFor(atMostBytes));
  }

  private String line(int longestBytes, Deadline deadline) {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    int b = first(deadline);
    for (; b != NL && b != END; b = stream.next(deadline)) {
      if (line.size() == longestBytes) {
        throw new ScpiException(
            "a line longer than " + longestBytes + " bytes came, and no end of it");
      }
      line.write(b);
    }
    if (b == NL && link.marksMessageEnd()) {
      readToEnd("the end of the line", deadline);
    }
    return line.toString(StandardCharsets.ISO_8859_1).strip();
  }

  /** IEEE 488.2 8.7.9 and 8.7.10: '#', the number of digits, the count, the bytes, NL. */
  byte[] block(int atMostBytes) {
    Deadline deadline = patience();
    skipToHash(deadline);
    int digits = digit(stream.next(deadline));
    if (digits == 0) {
      return indefinite(atMostBytes);
    }
    int count = 0;
    for (int i = 0; i < digits; i++) {
      count = 10 * count + digit(stream.next(deadline)); // at most nine digits fit an int
    }
    if (count > atMostBytes) {
      throw new ScpiException(
          "its header claims " + count + " bytes where at most " + atMostBytes + " were planned");
    }
    byte[] data = new byte[count];
    Deadline whole = deadlineFor(count);
    stream.fill(data, whole);
    String behind = "the " + count + " bytes that its header claims";
    if (link.marksMessageEnd()) {
      readToEnd(behind, whole);
    } else {
      readToNewLine(behind);
    }
    return data;
  }

  private void skipToHash(Deadline deadline) {
    StringBuilder prefix = new StringBuilder();
    for (int b = first(deadline); b != '#'; b = stream.next(deadline)) {
      if (b == NL || b == END || prefix.length() == LONGEST_PREFIX) {
        throw new ScpiException(
            "it says '" + prefix.toString().strip() + "' where a block of data should be");
      }
      prefix.append((char) b);
    }
  }

  private static int digit(int character) {
    if (character < '0' || character > '9') {
      throw new ScpiException(
          character == END
              ? "the header of the block is cut off"
              : "the header of the block has '" + (char) character + "' where a digit should be");
    }
    return character - '0';
  }

  private byte[] indefinite(int atMostBytes) {
    if (!link.marksMessageEnd()) {
      throw new ScpiException(
          "it sends a block of unstated length (#0), whose end this link cannot tell: set the"
              + " instrument to blocks with a length, or use another link");
    }
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    Deadline whole = deadlineFor(atMostBytes);
    for (int b = stream.next(whole); b != END; b = stream.next(whole)) {
      if (data.size() > atMostBytes) {
        throw new ScpiException(
            "a block of unstated length goes on past the " + atMostBytes + " bytes planned");
      }
      data.write(b);
    }
    byte[] bytes = data.toByteArray();
    boolean closed = bytes.length > 0 && bytes[bytes.length - 1] == NL;
    return closed ? Arrays.copyOf(bytes, bytes.length - 1) : bytes;
  }

  /** On a link that marks ends, all up to the mark belongs to this reply, be it NL or not. */
  private void readToEnd(String behind, Deadline deadline) {
    for (int extra = 0; extra <= LONGEST_TAIL; extra++) {
      if (stream.next(deadline) == END) {
        return;
      }
    }
    throw new ScpiException("more data follow " + behind);
  }

  /** Reads on to the NL behind a block, which some instruments leave out or precede with a byte. */
  private void readToNewLine(String behind) {
    Deadline deadline = Deadline.after(TAIL_SILENCE, clock);
    try {
      for (int extra = 0; extra <= LONGEST_TAIL; extra++) {
        if (stream.next(deadline) == NL) {
          return;
        }
      }
    } catch (LinkTimeoutException | LinkClosedException e) {
      LOG.debug("{}: no NL behind a block", link.resource());
      newLineOwed = true;
      return;
    }
    throw new ScpiException("more data follow " + behind);
  }

  /** The first byte of a reply, past an NL that came too late for the block before. */
  private int first(Deadline deadline) {
    int b = stream.next(deadline);
    boolean late = newLineOwed && b == NL;
    newLineOwed = false;
    return late ? stream.next(deadline) : b;
  }

  private Deadline patience() {
    return Deadline.after(options.replyTimeout(), clock);
  }

  /** A block that comes slower, without ever falling silent, is given up. */
  private Deadline deadlineFor(int bytes) {
    long millis = 1000L * bytes / link.slowestBytesPerSecond();
    return Deadline.after(options.replyTimeout().plusMillis(millis), clock);
  }
}
