package mainsgap.transfer.instant;

import mainsgap.transfer.supply.Residue;

/**
 * A break of a contact that bounces, on a load that discharges in it.
 *
 * @param from where the discharge surely is, inclusive
 * @param to exclusive; the contact makes about here
 * @param openTo the contact makes no sooner
 * @param residue what is left on the load in it
 */
record OpenedAgain(int from, int to, int openTo, Residue residue) {
  /** A contact has come to rest this long after a make that was located (own choice). */
  static final double BOUNCES_SECONDS = 8e-3;

  /** No bounce lasts longer (own choice). */
  static final double LONGEST_SECONDS = 2.5e-3;

  /** Half a swing of 400 Hz (own choice): so long before, a ring has been on the other side. */
  static final double LONGEST_SWING_SECONDS = 1.25e-3;

  /** Time constants of discharges: with shorter ones samples lie at the residue. */
  static final double SHORTEST_DECAY_SECONDS = 20e-6;

  static final double LONGEST_DECAY_SECONDS = 2e-3;
}
