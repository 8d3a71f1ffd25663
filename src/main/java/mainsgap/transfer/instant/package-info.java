/**
 * The instants of a gap: loss, openings, makes and the return, each by the search that its kind
 * needs.
 */
@NullMarked
package mainsgap.transfer.instant;

import org.jspecify.annotations.NullMarked;
