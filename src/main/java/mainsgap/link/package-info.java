/** Bytes to and from an instrument, and the resource names that say where it is. */
@NullMarked
package mainsgap.link;

import org.jspecify.annotations.NullMarked;
