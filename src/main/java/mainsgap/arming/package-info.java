/** Preflight, the loop of trials as a state machine, and the mains switch. */
@NullMarked
package mainsgap.arming;

import org.jspecify.annotations.NullMarked;
