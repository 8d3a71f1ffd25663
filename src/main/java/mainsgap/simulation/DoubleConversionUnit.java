package mainsgap.simulation;

import java.util.SplittableRandom;
import mainsgap.simulation.Draw.Occasion;
import mainsgap.simulation.NodeVoltage.Ring;
import mainsgap.simulation.TrialTruth.Change;
import mainsgap.simulation.TrialTruth.Kind;

/**
 * A unit whose inverter always feeds the load: in step with the mains while that is there, on its
 * own frequency without it.
 */
final class DoubleConversionUnit implements BackupUnit {
  private static final double DISTORTION = 0.01;
  private static final double SETTLING_SECONDS = 0.1;
  private static final double INPUT_DECAY_SECONDS = 0.3e-3;
  private static final double AMPLITUDE_REACH = 0.01;
  private static final double STEP_REACH_DEGREES = 4;

  private final SimulatedBenchSettings settings;

  DoubleConversionUnit(SimulatedBenchSettings settings) {
    this.settings = settings;
  }

  @Override
  public Episode atRest() {
    SplittableRandom random = Draw.of(settings.seed(), Occasion.REST, 0);
    Supply mains = MainsSupply.drawn(settings.mains(), random);
    return new Episode(
        inStep(mains, 0, random), mains, SignalWires.atRest(), 0, null, 0, random.nextLong());
  }

  @Override
  public Episode opening(Opening opening) {
    int number = opening.number();
    SplittableRandom random = Draw.of(settings.seed(), Occasion.OPENING, number);
    Supply mains = opening.mains(settings.mains(), random);
    Voltage pickup = MainsSupply.pickupOf(mains);
    ContactEdges hand = opening.edges(mains, SimulatedLoad.RESISTIVE, random);
    NodeVoltage.Pieces input = new NodeVoltage.Pieces(mains);
    for (int i = 0; i < hand.count(); i++) {
      if (ContactEdges.isLikeFirst(i)) {
        input.openAt(hand.at(i), INPUT_DECAY_SECONDS, pickup);
      } else {
        input.fedAt(hand.at(i), mains, Ring.NONE);
      }
    }
    double change = hand.first();
    HarmonicSupply before = inStep(mains, change, random);
    Supply after = free(before, change, random);
    return new Episode(
        new NodeVoltage.Pieces(before).fedAt(change, after, Ring.NONE).build(),
        input.build(),
        SignalWires.opening(hand.last(), change),
        hand.last() + SETTLING_SECONDS,
        truth(Change.OPENING, number, before, after, change),
        random.nextDouble(0.25, 0.6),
        random.nextLong());
  }

  @Override
  public Episode closing(int number) {
    SplittableRandom random = Draw.of(settings.seed(), Occasion.CLOSING, number);
    Supply mains = MainsSupply.drawn(settings.mains(), random);
    double change = Qualification.drawn(random);
    HarmonicSupply after = inStep(mains, change, random);
    Supply before = free(after, change, random);
    return new Episode(
        new NodeVoltage.Pieces(before).fedAt(change, after, Ring.NONE).build(),
        new NodeVoltage.Pieces(MainsSupply.pickupOf(mains)).fedAt(0, mains, Ring.NONE).build(),
        SignalWires.closing(0, change),
        change + SETTLING_SECONDS,
        truth(Change.CLOSING, number, before, after, change),
        Qualification.placeInForcedRecord(random),
        random.nextLong());
  }

  private HarmonicSupply inStep(Supply mains, double seconds, SplittableRandom random) {
    double degrees = mains.degreesAt(seconds) + Draw.around(STEP_REACH_DEGREES, random);
    double rmsVolts = settings.mains().volts() * (1 + Draw.around(AMPLITUDE_REACH, random));
    Phase phase = new Phase(mains.hertz(), seconds, degrees);
    return new HarmonicSupply(phase, rmsVolts, DISTORTION, random);
  }

  /** The same wave on its own frequency, which is 0.05 to 0.15 % from that of the mains. */
  private static Supply free(HarmonicSupply inStep, double seconds, SplittableRandom random) {
    double apart = random.nextDouble(5e-4, 1.5e-3) * (random.nextBoolean() ? 1 : -1);
    return inStep.turnedTo(inStep.hertz() * (1 + apart), seconds);
  }

  private static TrialTruth truth(
      Change change, int number, Supply before, Supply after, double seconds) {
    return new TrialTruth(
        change,
        number,
        Kind.NO_GAP,
        seconds,
        seconds,
        seconds,
        seconds,
        before.degreesAt(seconds),
        0.0,
        before.hertz(),
        after.hertz());
  }
}
