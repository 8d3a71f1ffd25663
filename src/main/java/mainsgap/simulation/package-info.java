/**
 * A simulated backup unit on the mains and the simulated scope that watches it, with known truth.
 */
@NullMarked
package mainsgap.simulation;

import org.jspecify.annotations.NullMarked;
