package mainsgap.simulation;

import java.util.SplittableRandom;
import mainsgap.simulation.Draw.Occasion;
import mainsgap.simulation.NodeVoltage.Ring;
import mainsgap.simulation.TrialTruth.Change;
import mainsgap.simulation.TrialTruth.Kind;
import org.jspecify.annotations.Nullable;

/**
 * A unit whose relay feeds the load from the mains until it is lost, and from an inverter after:
 * standby and line-interactive units.
 */
final class RelayUnit implements BackupUnit {
  /** From here on soft starts and rings are over. */
  private static final double SETTLING_SECONDS = 0.1;

  /** The mains input of a unit alone discharges at once. */
  private static final double INPUT_DECAY_SECONDS = 0.3e-3;

  private final SimulatedBenchSettings settings;
  private final RelayTraits relay;

  RelayUnit(SimulatedBenchSettings settings) {
    this.settings = settings;
    this.relay = RelayTraits.of(settings.unit());
  }

  @Override
  public Episode atRest() {
    SplittableRandom random = Draw.of(settings.seed(), Occasion.REST, 0);
    Supply mains = MainsSupply.drawn(settings.mains(), random);
    return new Episode(mains, mains, SignalWires.atRest(), 0, null, 0, random.nextLong());
  }

  @Override
  public Episode opening(Opening opening) {
    int number = opening.number();
    SplittableRandom random = Draw.of(settings.seed(), Occasion.OPENING, number);
    Supply mains = opening.mains(settings.mains(), random);
    Voltage pickup = MainsSupply.pickupOf(mains);
    ContactEdges hand = opening.edges(mains, settings.load(), random);
    double noticed =
        relay
            .detector(settings.mains().volts())
            .noticesAt(mains, throughHand(mains, hand, pickup).build());
    double released = relay.releaseAfter(noticed, random);
    ContactEdges make = relay.makeAfter(released, random);
    Supply inverter =
        settings.unit() == SimulatedUnit.NEVER_RETURNS
            ? null
            : Inverter.startingAt(make.first(), mains, settings, random);

    NodeVoltage.Pieces input = throughHand(mains, hand, pickup);
    input.openAt(Math.max(released, hand.last()), INPUT_DECAY_SECONDS, pickup);
    NodeVoltage.Pieces output = untilRelease(mains, hand, released, pickup);
    if (inverter != null) {
      feed(output, inverter, make, Inverter.ring(random), pickup);
    }
    return new Episode(
        output.build(),
        input.build(),
        SignalWires.opening(hand.last(), released),
        make.last() + SETTLING_SECONDS,
        openingTruth(number, mains, lastFeed(hand, released), hand, make, inverter),
        random.nextDouble(0.25, 0.6),
        random.nextLong());
  }

  @Override
  public Episode closing(int number) {
    SplittableRandom random = Draw.of(settings.seed(), Occasion.CLOSING, number);
    Supply mains = MainsSupply.drawn(settings.mains(), random);
    Voltage pickup = MainsSupply.pickupOf(mains);
    NodeVoltage.Pieces input = new NodeVoltage.Pieces(pickup);
    feed(input, mains, ToggleSwitch.closing(random), Ring.NONE, pickup);
    double released = Qualification.drawn(random);
    ContactEdges make = relay.makeAfter(released, random);
    Supply inverter =
        settings.unit() == SimulatedUnit.NEVER_RETURNS
            ? null
            : Inverter.runningUntil(released, mains, settings, random);
    NodeVoltage.Pieces output = new NodeVoltage.Pieces(inverter == null ? pickup : inverter);
    output.openAt(released, loadDecaySeconds(), pickup);
    feed(output, mains, make, Ring.NONE, pickup);
    return new Episode(
        output.build(),
        input.build(),
        SignalWires.closing(0, make.last()),
        make.last() + SETTLING_SECONDS,
        inverter == null ? null : closingTruth(number, inverter, released, make, mains),
        Qualification.placeInForcedRecord(random),
        random.nextLong());
  }

  /** The node behind the mains switch while the load hangs on it. */
  private NodeVoltage.Pieces throughHand(Supply mains, ContactEdges hand, Voltage pickup) {
    return untilRelease(mains, hand, Double.POSITIVE_INFINITY, pickup);
  }

  private NodeVoltage.Pieces untilRelease(
      Supply mains, ContactEdges hand, double released, Voltage pickup) {
    NodeVoltage.Pieces node = new NodeVoltage.Pieces(mains);
    for (int i = 0; i < hand.count() && hand.at(i) < released; i++) {
      if (ContactEdges.isLikeFirst(i)) {
        node.openAt(hand.at(i), loadDecaySeconds(), pickup);
      } else {
        node.fedAt(hand.at(i), mains, Ring.NONE);
      }
    }
    if (released < hand.last()) {
      node.openAt(released, loadDecaySeconds(), pickup);
    }
    return node;
  }

  private void feed(
      NodeVoltage.Pieces node, Supply supply, ContactEdges make, Ring ring, Voltage pickup) {
    for (int i = 0; i < make.count(); i++) {
      if (ContactEdges.isLikeFirst(i)) {
        node.fedAt(make.at(i), supply, ring);
      } else {
        node.openAt(make.at(i), loadDecaySeconds(), pickup);
      }
    }
  }

  /** When the mains last left the load: by the hand, or by the relay where a re-make still held. */
  private static double lastFeed(ContactEdges hand, double released) {
    double last = hand.first();
    boolean fed = false;
    for (int i = 0; i < hand.count() && hand.at(i) < released; i++) {
      fed = !ContactEdges.isLikeFirst(i);
      last = fed ? last : hand.at(i);
    }
    return fed ? released : last;
  }

  private static TrialTruth openingTruth(
      int number,
      Supply mains,
      double lastOpening,
      ContactEdges hand,
      ContactEdges make,
      @Nullable Supply inverter) {
    boolean returns = inverter != null;
    return new TrialTruth(
        Change.OPENING,
        number,
        returns ? Kind.GAP : Kind.NO_RETURN,
        hand.first(),
        lastOpening,
        returns ? make.first() : null,
        returns ? make.last() : null,
        mains.degreesAt(hand.first()),
        inverter == null ? null : phaseStep(mains, inverter, make.last()),
        mains.hertz(),
        inverter == null ? null : inverter.hertz());
  }

  private static TrialTruth closingTruth(
      int number, Supply inverter, double released, ContactEdges make, Supply mains) {
    return new TrialTruth(
        Change.CLOSING,
        number,
        Kind.GAP,
        released,
        released,
        make.first(),
        make.last(),
        inverter.degreesAt(released),
        phaseStep(inverter, mains, make.last()),
        inverter.hertz(),
        mains.hertz());
  }

  private static double phaseStep(Supply before, Supply after, double seconds) {
    return Phase.wrapped(after.degreesAt(seconds) - before.degreesAt(seconds));
  }

  private double loadDecaySeconds() {
    return settings.load().decaySeconds();
  }
}
