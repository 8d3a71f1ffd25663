package mainsgap.simulation;

import java.util.SplittableRandom;

/** A toggle switch in the mains, worked by a hand. */
final class ToggleSwitch {
  /** Common practice: toggles bounce for tenths of a millisecond to some milliseconds. */
  private static final double LONGEST_STRETCH_SECONDS = 0.8e-3;

  private static final double BOUNCING_SHARE = 0.25;
  private static final double ARCING_SHARE = 0.25;
  private static final int MOST_BOUNCES = 3;

  /** How far the current of a load with capacitors runs ahead of the voltage. */
  private static final double CAPACITIVE_LEAD_DEGREES = 40;

  private ToggleSwitch() {}

  /**
   * An opening at 0 s. In a part of the openings the contact bounces; in a part of those that do
   * not it draws an arc, which feeds the load on until its current passes zero.
   */
  static ContactEdges opening(Supply mains, SimulatedLoad load, SplittableRandom random) {
    ContactEdges edges = edges(random);
    boolean arcs = random.nextDouble() < ARCING_SHARE && edges.count() == 1;
    return arcs ? ContactEdges.clean(nextCurrentZero(0, mains, load)) : edges;
  }

  /** A closing at 0 s, in a part of the cases with bounces. */
  static ContactEdges closing(SplittableRandom random) {
    return edges(random);
  }

  private static ContactEdges edges(SplittableRandom random) {
    boolean bounces = random.nextDouble() < BOUNCING_SHARE;
    int count = bounces ? random.nextInt(1, MOST_BOUNCES + 1) : 0;
    return ContactEdges.bouncing(0, count, LONGEST_STRETCH_SECONDS, random);
  }

  private static double nextCurrentZero(double seconds, Supply mains, SimulatedLoad load) {
    double lead = load == SimulatedLoad.CAPACITIVE ? CAPACITIVE_LEAD_DEGREES : 0;
    double degreesToZero = 180 - (mains.degreesAt(seconds) + lead) % 180;
    return seconds + degreesToZero / (360 * mains.hertz());
  }
}
