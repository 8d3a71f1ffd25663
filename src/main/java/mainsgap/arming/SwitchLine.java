package mainsgap.arming;

/**
 * The way to a switch that is commanded. One thread at a time uses it. A fault lets go of the link,
 * and the next call opens it anew.
 */
public interface SwitchLine extends AutoCloseable {

  /** What is at its end, and where: 'the AC source at TCPIP0::...'. */
  String words();

  /**
   * Tells the switch to move; returns once it has confirmed, as far as it can.
   *
   * @throws mainsgap.link.LinkException where the link failed
   * @throws mainsgap.scpi.ScpiException where the switch complains or its answer makes no sense
   */
  void move(SwitchMove move);

  /** Where the switch says that it stands; fails as {@link #move} does. */
  SwitchPosition position();

  /** Whether it can be told at which angle to open. */
  boolean choosesAngle();

  /** Tells it to open at that angle of the mains; fails as {@link #move} does. */
  void openAt(double degrees);

  /** Lets go of the link. Never throws. */
  @Override
  void close();
}
