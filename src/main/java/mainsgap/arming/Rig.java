package mainsgap.arming;

import mainsgap.scope.Oscilloscope;
import mainsgap.session.SessionLog;

/**
 * What the loop works with.
 *
 * @param instrument armed and disarmed by the loop, closed by its owner
 * @param mains the switch upstream of the unit
 * @param log written by the loop, closed by its owner
 * @param measuring what becomes of a capture
 */
public record Rig(
    Oscilloscope instrument, MainsSwitch mains, SessionLog log, Measuring measuring) {}
