/**
 * The pictures of trials: the last trace, the strip of all of them, and where on the wave they
 * fell.
 */
@NullMarked
package mainsgap.desk.pictures;

import org.jspecify.annotations.NullMarked;
