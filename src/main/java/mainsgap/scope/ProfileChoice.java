package mainsgap.scope;

import java.util.function.Consumer;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;

/** Finds the profile that fits an instrument, by the same probe that a user can watch. */
final class ProfileChoice {
  private ProfileChoice() {}

  /** Opens the instrument for the time of the probe. */
  static ProbeReport probed(
      InstrumentAccess access, InstrumentProfiles profiles, Consumer<ProbeStep> listener) {
    ScpiOptions options = ScpiOptions.standard().withReplyTimeout(Oscilloscopes.PROBE_TIMEOUT);
    try (ScpiInstrument instrument = access.open(options)) {
      return new ProfileProbe(profiles, instrument, access.stop(), listener).run();
    }
  }

  /**
   * The profile that fits.
   *
   * @throws ScopeException where none or several do
   */
  static InstrumentProfile choose(ProbeReport report, InstrumentProfiles profiles) {
    return profiles.named(report.chosen().orElseThrow(() -> new ScopeException(report.sentence())));
  }
}
