/** Series of readings, tolerance bounds, rounding by uncertainty: pure functions. */
@NullMarked
package mainsgap.statistics;

import org.jspecify.annotations.NullMarked;
