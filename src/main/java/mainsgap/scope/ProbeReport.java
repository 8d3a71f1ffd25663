package mainsgap.scope;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import mainsgap.scope.ProbedProfile.Fit;
import mainsgap.scpi.Identity;

/**
 * What a probe found, profile by profile.
 *
 * @param identity who the instrument says it is
 * @param profiles all profiles, in the order in which they were looked at
 */
public record ProbeReport(Identity identity, List<ProbedProfile> profiles) {

  /** Takes its own copy. */
  public ProbeReport {
    profiles = List.copyOf(profiles);
  }

  /** The names of the profiles that fit. */
  public List<String> fitting() {
    return profiles.stream()
        .filter(probed -> probed.fit() == Fit.FITS)
        .map(ProbedProfile::profile)
        .toList();
  }

  /** The one profile that fits; empty where none or several do. */
  public Optional<String> chosen() {
    List<String> fitting = fitting();
    return fitting.size() == 1 ? Optional.of(fitting.get(0)) : Optional.empty();
  }

  /** What the probe comes to, in a sentence. */
  public String sentence() {
    List<String> fitting = fitting();
    return switch (fitting.size()) {
      case 0 ->
          "no instrument profile fits "
              + identity
              + ": choose one of "
              + profiles.stream()
                  .map(ProbedProfile::profile)
                  .sorted()
                  .collect(Collectors.joining(", "))
              + ", or write one from its programming manual";
      case 1 -> "the instrument profile '" + fitting.get(0) + "' fits " + identity;
      default ->
          "several instrument profiles fit "
              + identity
              + ": choose one of "
              + String.join(", ", fitting);
    };
  }
}
