/** The measurement: loss, return, transfer time, its uncertainty and the verdict of a trial. */
@NullMarked
package mainsgap.transfer;

import org.jspecify.annotations.NullMarked;
