package mainsgap.simulation;

/** A unit on its mains: what a movement of the mains switch leads to, by seed and number alone. */
interface BackupUnit {

  /** The mains closed since ever. */
  Episode atRest();

  /** The {@code number}-th opening of the mains, from 1, by a contact that opens when it can. */
  default Episode opening(int number) {
    return opening(new Opening(number, null));
  }

  /** An opening of the mains. */
  Episode opening(Opening opening);

  /** The {@code number}-th closing of the mains, from 1. */
  Episode closing(int number);
}
