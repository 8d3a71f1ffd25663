/** Every wait in the house: the clock, deadlines, the request to stop. */
@NullMarked
package mainsgap.waiting;

import org.jspecify.annotations.NullMarked;
