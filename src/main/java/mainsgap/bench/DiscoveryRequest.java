package mainsgap.bench;

import java.time.Duration;

/**
 * What is looked for.
 *
 * @param listen how long announcements are awaited
 * @param broadcast whether VXI-11 instruments are asked for by broadcast
 * @param identify whether what announces itself, answered the broadcast or is a USBTMC instrument
 *     is asked who it is
 * @param identifySerial whether every serial port is opened and asked, whatever hangs on it
 */
public record DiscoveryRequest(
    Duration listen, boolean broadcast, boolean identify, boolean identifySerial) {}
