/**
 * What happens to an output, before it is measured: that it leaves its supply or only sags, that it
 * follows again, and whether its mains was lost at all.
 */
@NullMarked
package mainsgap.transfer.event;

import org.jspecify.annotations.NullMarked;
