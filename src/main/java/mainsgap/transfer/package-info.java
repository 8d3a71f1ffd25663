/**
 * The measurement: an event is searched in a capture and measured to its outcome. {@link
 * mainsgap.transfer.TransferMeasurement} is the way in; the rooms below it are read in the order
 * {@code supply}, {@code event}, {@code instant}, {@code gap}. {@code outcome}, {@code claim} and
 * {@code tolerance} are for everybody.
 */
@NullMarked
package mainsgap.transfer;

import org.jspecify.annotations.NullMarked;
