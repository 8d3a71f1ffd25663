package mainsgap.scope;

import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import mainsgap.scope.InstrumentProfile.Probe;
import mainsgap.scpi.Identity;
import mainsgap.scpi.ScpiException;
import mainsgap.scpi.ScpiInstrument;

/**
 * Finds the profile that fits an instrument: by what it says of itself, then by queries that change
 * nothing.
 */
final class ProfileChoice {
  private final InstrumentProfiles profiles;
  private final ScpiInstrument instrument;

  ProfileChoice(InstrumentProfiles profiles, ScpiInstrument instrument) {
    this.profiles = profiles;
    this.instrument = instrument;
  }

  InstrumentProfile choose() {
    Identity identity = instrument.identity();
    List<InstrumentProfile> named =
        profiles.all().stream()
            .filter(profile -> isNamed(profile, identity))
            .filter(this::answersProbes)
            .toList();
    if (!named.isEmpty()) {
      return theOnly(named, identity);
    }
    return theOnly(
        profiles.all().stream()
            .filter(profile -> profile.identification().pattern() == null)
            .filter(this::answersProbes)
            .toList(),
        identity);
  }

  private InstrumentProfile theOnly(List<InstrumentProfile> fitting, Identity identity) {
    if (fitting.size() == 1) {
      return fitting.get(0);
    }
    String all = fitting.stream().map(InstrumentProfile::name).collect(Collectors.joining(", "));
    throw new ScopeException(
        fitting.isEmpty()
            ? "no instrument profile fits "
                + identity
                + ": choose one of "
                + profiles.names()
                + ", or write one from its programming manual"
            : "several instrument profiles fit " + identity + ": choose one of " + all);
  }

  private static boolean isNamed(InstrumentProfile profile, Identity identity) {
    Pattern pattern = profile.identification().pattern();
    String answer =
        String.join(
            ",", identity.manufacturer(), identity.model(), identity.serial(), identity.firmware());
    return pattern != null && pattern.matcher(answer).find();
  }

  private boolean answersProbes(InstrumentProfile profile) {
    return profile.identification().probes().stream().allMatch(this::answers);
  }

  private boolean answers(Probe probe) {
    try {
      String answer = instrument.query(probe.query().filled(Map.of()));
      return probe.reply().matcher(answer.strip()).matches();
    } catch (ScpiException e) {
      // An instrument that does not know the question answers with an error or not at all.
      return false;
    } finally {
      instrument.drainErrors();
    }
  }
}
