/**
 * One gap from its instants to its outcome: budget of uncertainty, cleanness of the return, and
 * later breaks.
 */
@NullMarked
package mainsgap.transfer.gap;

import org.jspecify.annotations.NullMarked;
