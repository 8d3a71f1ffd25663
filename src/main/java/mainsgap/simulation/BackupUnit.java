package mainsgap.simulation;

/** A unit on its mains: what a movement of the mains switch leads to, by seed and number alone. */
interface BackupUnit {

  /** The mains closed since ever. */
  Episode atRest();

  /** The {@code number}-th opening of the mains, from 1. */
  Episode opening(int number);

  /** The {@code number}-th closing of the mains, from 1. */
  Episode closing(int number);
}
