/**
 * Where, between two curves that are given, one was left for the other: edges by least squares, by
 * the mean over what stays possible, and how well each shape of an edge explains the samples. Knows
 * windows of samples, no supplies.
 */
@NullMarked
package mainsgap.transfer.edge;

import org.jspecify.annotations.NullMarked;
