package mainsgap.transfer.instant;

import mainsgap.transfer.edge.Edge;

/**
 * The makes that end a gap.
 *
 * @param firstSeconds when the load was first fed again
 * @param settled from when on it is fed without a break
 * @param inRest whether the settled one lies within a rest of the output, where it does not show
 */
public record Returns(double firstSeconds, Edge settled, boolean inRest) {}
