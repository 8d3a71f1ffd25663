/** Puts a rig together: instrument, mains switch and log become one controller. */
@NullMarked
package mainsgap.bench;

import org.jspecify.annotations.NullMarked;
