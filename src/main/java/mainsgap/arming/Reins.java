package mainsgap.arming;

import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;

/**
 * How others reach into the loop.
 *
 * @param clock the time
 * @param stop ends the series
 * @param proceed ends a settling time
 * @param consent lets a commanded switch close
 * @param additions what a person adds to the log
 */
public record Reins(
    Clock clock, StopRequest stop, Proceed proceed, Consent consent, Additions additions) {}
