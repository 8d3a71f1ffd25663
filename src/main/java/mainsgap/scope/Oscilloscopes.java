package mainsgap.scope;

import java.time.Duration;
import java.util.function.Consumer;
import java.util.function.Supplier;
import mainsgap.link.LinkException;
import mainsgap.link.ResourceName;
import mainsgap.scpi.Identity;
import mainsgap.scpi.ScpiException;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.jspecify.annotations.Nullable;

/** Opens an instrument with the profile that fits it. */
public final class Oscilloscopes {
  /** A question that an instrument does not know is met with silence: not long for each. */
  static final Duration PROBE_TIMEOUT = Duration.ofSeconds(1);

  private Oscilloscopes() {}

  /**
   * Opens the instrument.
   *
   * @param profileName the profile to use; null to find the one that fits
   * @param stop ends its waits
   * @throws ScopeException with a sentence if it cannot be reached or no profile fits it
   */
  public static Oscilloscope open(
      ResourceName resource,
      InstrumentProfiles profiles,
      @Nullable String profileName,
      Clock clock,
      StopRequest stop) {
    return open(InstrumentAccess.plain(resource, clock, stop), profiles, profileName);
  }

  /** The same in a way of one's own. */
  public static Oscilloscope open(
      InstrumentAccess access, InstrumentProfiles profiles, @Nullable String profileName) {
    return opening(
        access,
        () -> {
          InstrumentProfile profile =
              profileName == null
                  ? ProfileChoice.choose(
                      ProfileChoice.probed(access, profiles, step -> {}), profiles)
                  : profiles.named(profileName);
          return open(access, profile, exchanged -> {});
        });
  }

  /**
   * Asks the instrument the harmless questions by which its profile is found.
   *
   * @param listener hears of each question once it is through
   * @throws ScopeException with a sentence if it cannot be reached or does not say who it is
   */
  public static ProbeReport probe(
      InstrumentAccess access, InstrumentProfiles profiles, Consumer<ProbeStep> listener) {
    return opening(access, () -> ProfileChoice.probed(access, profiles, listener));
  }

  static Oscilloscope open(
      InstrumentAccess access, InstrumentProfile profile, Consumer<Exchanged> listener) {
    ScpiOptions options = ScpiOptions.standard().withCommandGap(profile.timing().gap());
    ScpiInstrument instrument = access.open(options);
    try {
      Identity identity = instrument.identity();
      listener.accept(new Exchanged("connecting", "", "*IDN?", identity.toString()));
      ProfiledOscilloscope oscilloscope =
          new ProfiledOscilloscope(
              new Exchange(instrument, listener), profile, identity, access.clock(), access.stop());
      oscilloscope.connect();
      return oscilloscope;
    } catch (RuntimeException e) {
      instrument.close();
      throw e;
    }
  }

  private static <T> T opening(InstrumentAccess access, Supplier<T> opening) {
    try {
      return opening.get();
    } catch (ScpiException | LinkException e) {
      throw Exchange.wrapped("opening " + access.resource(), e);
    }
  }
}
