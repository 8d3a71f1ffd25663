package mainsgap.link;

import static java.util.stream.Collectors.toUnmodifiableMap;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a HiSLIP message is (IVI-6.1 table 4, as far as version 1.0 goes). The types that a later
 * version added are unknown here, and are refused as unknown.
 */
public enum HislipType {
  /** Client, synchronous channel: opens it. */
  INITIALIZE(0),
  /** Server: the version and the number of the session. */
  INITIALIZE_RESPONSE(1),
  /** Either side: the connection is of no more use. */
  FATAL_ERROR(2),
  /** Either side: a message was not understood and is ignored. */
  ERROR(3),
  /** Client: asks for a lock, or gives it back. */
  ASYNC_LOCK(4),
  /** Server: whether it has. */
  ASYNC_LOCK_RESPONSE(5),
  /** A piece of a message. */
  DATA(6),
  /** The last piece of a message. */
  DATA_END(7),
  /** Client: the synchronous channel is clear on this side. */
  DEVICE_CLEAR_COMPLETE(8),
  /**
   * Server, synchronous channel (the table's 'asynchronous' contradicts clause 6.12): so is mine.
   */
  DEVICE_CLEAR_ACKNOWLEDGE(9),
  /** Client: remote or local control. */
  ASYNC_REMOTE_LOCAL_CONTROL(10),
  /** Server: done. */
  ASYNC_REMOTE_LOCAL_RESPONSE(11),
  /** Client: group execute trigger. */
  TRIGGER(12),
  /** Server, synchronous channel: a reply was thrown away because a new message came. */
  INTERRUPTED(13),
  /** Server, asynchronous channel: the same. */
  ASYNC_INTERRUPTED(14),
  /** Client: the longest message that it takes. */
  ASYNC_MAXIMUM_MESSAGE_SIZE(15),
  /** Server: the longest that it takes. */
  ASYNC_MAXIMUM_MESSAGE_SIZE_RESPONSE(16),
  /** Client, asynchronous channel: opens it. */
  ASYNC_INITIALIZE(17),
  /** Server: the session is complete. */
  ASYNC_INITIALIZE_RESPONSE(18),
  /** Client: begins a device clear. */
  ASYNC_DEVICE_CLEAR(19),
  /** Server: the instrument wants service. */
  ASYNC_SERVICE_REQUEST(20),
  /** Client: asks for the status byte. */
  ASYNC_STATUS_QUERY(21),
  /** Server: the status byte. */
  ASYNC_STATUS_RESPONSE(22),
  /** Server: the device is cleared. */
  ASYNC_DEVICE_CLEAR_ACKNOWLEDGE(23),
  /** Client: asks who holds locks. */
  ASYNC_LOCK_INFO(24),
  /** Server: who does. */
  ASYNC_LOCK_INFO_RESPONSE(25);

  private static final Map<Integer, HislipType> BY_CODE =
      Stream.of(values()).collect(toUnmodifiableMap(HislipType::code, type -> type));

  /** From here on, codes belong to vendors. */
  static final int FIRST_OF_VENDORS = 128;

  private final int code;

  HislipType(int code) {
    this.code = code;
  }

  /** The code on the wire. */
  public int code() {
    return code;
  }

  /** The type of a code; empty where version 1.0 knows none. */
  public static Optional<HislipType> of(int code) {
    return Optional.ofNullable(BY_CODE.get(code));
  }
}
