package mainsgap.bench;

import mainsgap.arming.CommandedSwitch;
import mainsgap.arming.HandSwitch;
import mainsgap.arming.MainsSwitch;
import mainsgap.link.LinkException;
import mainsgap.link.ResourceName;
import mainsgap.scope.InstrumentProfiles;
import mainsgap.scope.Oscilloscope;
import mainsgap.scope.Oscilloscopes;
import mainsgap.scope.ScopeException;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;

/** The instrument and the mains switch of a series. The thread that opens it owns it. */
final class Equipment implements AutoCloseable {
  /** Which instrument of the simulated bench a series in the same process runs on. */
  private static final SimulatedInstrument SIMULATED = SimulatedInstrument.TEN_FIELD_SCOPE;

  private final Oscilloscope instrument;
  private final MainsSwitch mains;
  private final String resource;
  private final @Nullable SimulatedBench simulation;
  private final EmergencyOff emergencyOff;

  private Equipment(
      Oscilloscope instrument,
      MainsSwitch mains,
      String resource,
      @Nullable SimulatedBench simulation,
      StopRequest stop) {
    this.instrument = instrument;
    this.mains = mains;
    this.resource = resource;
    this.simulation = simulation;
    this.emergencyOff = EmergencyOff.watching(mains, stop);
  }

  /** Opens what {@code setup} names. */
  static Equipment open(SeriesSetup setup, Clock clock, StopRequest stop) {
    return open(setup, clock, stop, mainsSwitch(setup, clock));
  }

  /** Opens the instrument alone: a commanded mains switch stays as it is, and is not spoken to. */
  static Equipment forALook(SeriesSetup setup, Clock clock, StopRequest stop) {
    return open(setup, clock, stop, new HandSwitch());
  }

  private static Equipment open(
      SeriesSetup setup, Clock clock, StopRequest stop, MainsSwitch mains) {
    InstrumentProfiles profiles = InstrumentProfiles.load(ProfileFolder.find());
    if (setup.request().instrument() instanceof InstrumentChoice.Simulated simulated) {
      return simulated(simulated, setup, profiles, clock, stop);
    }
    requireKnown(setup.profile(), profiles);
    InstrumentChoice.Real real = (InstrumentChoice.Real) setup.request().instrument();
    ResourceName name = parsed(real.resource());
    return new Equipment(
        Oscilloscopes.open(name, profiles, setup.profile(), clock, stop),
        mains,
        name.toString(),
        null,
        stop);
  }

  private static MainsSwitch mainsSwitch(SeriesSetup setup, Clock clock) {
    RigSwitch commanded = setup.mainsSwitch();
    return commanded == null ? new HandSwitch() : commanded.commanded(clock);
  }

  private static Equipment simulated(
      InstrumentChoice.Simulated choice,
      SeriesSetup setup,
      InstrumentProfiles profiles,
      Clock clock,
      StopRequest stop) {
    SimulatedBench simulation = SimulatedBench.start(settings(choice, setup));
    try {
      ResourceName name = ResourceName.parse(simulation.resource(SIMULATED));
      Oscilloscope instrument =
          Oscilloscopes.open(name, profiles, SIMULATED.profile(), clock, stop);
      return new Equipment(
          instrument, new SimulatedHand(simulation), name.toString(), simulation, stop);
    } catch (RuntimeException e) {
      simulation.close();
      throw e;
    }
  }

  private static SimulatedBenchSettings settings(
      InstrumentChoice.Simulated choice, SeriesSetup setup) {
    try {
      return SimulatedBenchSettings.of(SimulatedUnit.named(choice.unit()), choice.seed())
          .withMains(setup.task().nominalVolts(), setup.task().nominalFrequencyHertz());
    } catch (IllegalArgumentException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  /** The rig's owner wrote the name, so a wrong one is wrong use. */
  private static void requireKnown(@Nullable String profile, InstrumentProfiles profiles) {
    if (profile == null) {
      return;
    }
    try {
      profiles.named(profile);
    } catch (ScopeException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  private static ResourceName parsed(String resource) {
    try {
      return ResourceName.parse(resource);
    } catch (LinkException e) {
      throw new BenchException(String.valueOf(e.getMessage()), e);
    }
  }

  Oscilloscope instrument() {
    return instrument;
  }

  MainsSwitch mains() {
    return mains;
  }

  /** Where the instrument is. */
  String resource() {
    return resource;
  }

  @Override
  public void close() {
    emergencyOff.close();
    instrument.close();
    if (mains instanceof CommandedSwitch commanded) {
      commanded.close();
    }
    if (simulation != null) {
      simulation.close();
    }
  }
}
