package mainsgap.scope;

import java.time.Duration;
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
  private static final Duration PROBE_TIMEOUT = Duration.ofSeconds(1);

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
    try {
      InstrumentProfile profile =
          profileName == null ? fitting(resource, profiles, clock) : profiles.named(profileName);
      return open(resource, profile, clock, stop);
    } catch (ScpiException | LinkException e) {
      throw Exchange.wrapped("opening " + resource, e);
    }
  }

  private static InstrumentProfile fitting(
      ResourceName resource, InstrumentProfiles profiles, Clock clock) {
    ScpiOptions options = ScpiOptions.standard().withReplyTimeout(PROBE_TIMEOUT);
    try (ScpiInstrument instrument = ScpiInstrument.open(resource, options, clock)) {
      return new ProfileChoice(profiles, instrument).choose();
    }
  }

  private static Oscilloscope open(
      ResourceName resource, InstrumentProfile profile, Clock clock, StopRequest stop) {
    ScpiOptions options = ScpiOptions.standard().withCommandGap(profile.timing().gap());
    ScpiInstrument instrument = ScpiInstrument.open(resource, options, clock);
    try {
      Identity identity = instrument.identity();
      ProfiledOscilloscope oscilloscope =
          new ProfiledOscilloscope(instrument, profile, identity, clock, stop);
      oscilloscope.connect();
      return oscilloscope;
    } catch (RuntimeException e) {
      instrument.close();
      throw e;
    }
  }
}
