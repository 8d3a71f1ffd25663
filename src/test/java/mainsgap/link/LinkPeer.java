package mainsgap.link;

import java.io.IOException;
import java.util.Set;
import mainsgap.waiting.Deadline;

/**
 * An instrument at the far end of one kind of link, which answers each message as the test says and
 * meets one that it has no answer for with silence. It goes on serving when a client has gone, and
 * after a device clear nothing said before is answered any more.
 *
 * <p>To put another kind of link under the suite, implement this beside the link's tests, and add
 * to {@code mainsgap.scpi} a class {@code ...SuiteTest extends LinkSuite} whose {@code peer()}
 * creates it.
 */
public interface LinkPeer extends AutoCloseable {

  /** How a reply comes. */
  enum Manner {
    /** In good order. */
    WHOLE,
    /** Each byte by itself, as slowly as the link lets it. */
    ONE_BYTE_AT_A_TIME,
    /** The end of the message is marked after its last byte, apart from it. */
    END_APART,
    /** Half of it, and then nothing. */
    STALLS_HALFWAY,
    /** Half of it, and then the connection is closed. */
    CLOSES_HALFWAY,
    /** What the link itself sends before a reply is not what belongs there. */
    WRONG_FRAME,
    /** What the link itself sends before a reply claims far more bytes than follow. */
    FRAME_CLAIMS_MORE
  }

  /** The manners that this kind of link has; the suite leaves the rest out. */
  Set<Manner> manners();

  /** Opens a link to it, anew each time. */
  Link open(Deadline connectBy);

  /**
   * Answers {@code message} from now on.
   *
   * @param message without its terminator
   * @param reply all its bytes, the NL included
   */
  void answer(String message, Manner manner, byte[] reply);

  /** Stops to serve. */
  @Override
  void close() throws IOException;
}
