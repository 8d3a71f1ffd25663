package mainsgap.simulation;

import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * An opening of the mains switch.
 *
 * @param number from 1
 * @param angleDegrees the angle of the mains at which an electronic switch opens cleanly; null
 *     where a contact opens when it can
 */
record Opening(int number, @Nullable Double angleDegrees) {

  /** The mains as it stands at this opening. */
  Supply mains(SimulatedBenchSettings.Mains nominal, SplittableRandom random) {
    return MainsSupply.drawn(nominal, angleDegrees, random);
  }

  /** How the contact, or what stands for it, opens. */
  ContactEdges edges(Supply mains, SimulatedLoad load, SplittableRandom random) {
    ContactEdges contact = ToggleSwitch.opening(mains, load, random);
    return angleDegrees == null ? contact : ContactEdges.clean(0);
  }
}
