/** Captures as the instrument gave them, and what can be computed from a trace: pure functions. */
@NullMarked
package mainsgap.signal;

import org.jspecify.annotations.NullMarked;
