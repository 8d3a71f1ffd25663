package mainsgap.link;

import mainsgap.waiting.Deadline;

/**
 * The two connections of a HiSLIP session, which live and die together.
 *
 * @param resource where they lead
 * @param synchronous for messages and replies
 * @param asynchronous for what must get through meanwhile
 */
record HislipChannels(
    ResourceName resource, HislipChannel synchronous, HislipChannel asynchronous) {

  /**
   * Returns where {@code header} is neither FatalError nor Error.
   *
   * @throws LinkClosedException for a FatalError, after which both channels are gone
   * @throws LinkException for an Error, after which the session goes on
   */
  void requireNoError(HislipHeader header, HislipChannel channel, Deadline deadline) {
    if (header.is(HislipType.FATAL_ERROR)) {
      String told = HislipFault.told(header, channel.text(deadline));
      drop();
      throw new LinkClosedException(
          resource + " ended the connection because of " + told + ": connect again");
    }
    if (header.is(HislipType.ERROR)) {
      String told = HislipFault.told(header, channel.text(deadline));
      throw new LinkException(resource + " ignored a message because of " + told);
    }
  }

  /** The complaint of a message that cannot stand where it came; both channels are dropped. */
  LinkClosedException outOfPlace(HislipHeader header, String expected) {
    drop();
    return new LinkClosedException(
        resource
            + " sent the HiSLIP message "
            + header.type().map(HislipType::name).orElse("of type " + header.typeCode())
            + " where "
            + expected
            + " belongs, so that the connection is of no more use: connect again");
  }

  void drop() {
    synchronous.drop();
    asynchronous.drop();
  }

  /** The server may close one connection as soon as it misses the other: that is no fault then. */
  void close() {
    synchronous.beginClose();
    asynchronous.beginClose();
    synchronous.close();
    asynchronous.close();
  }
}
