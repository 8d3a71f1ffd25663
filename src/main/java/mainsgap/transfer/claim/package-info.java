/**
 * A declared time and what may be said of it: decision rules, the verdict of a trial and of a
 * series.
 */
@NullMarked
package mainsgap.transfer.claim;

import org.jspecify.annotations.NullMarked;
