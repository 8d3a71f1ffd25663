package mainsgap.arming;

import java.time.Instant;

/**
 * What was asked of a commanded switch, and how it went.
 *
 * @param at when it was asked
 * @param sentence for people and for the session
 */
public record SwitchDeed(Instant at, String sentence) {}
