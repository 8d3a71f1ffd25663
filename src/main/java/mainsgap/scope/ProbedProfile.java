package mainsgap.scope;

import java.util.List;

/**
 * What a probe found of one profile.
 *
 * @param profile its name
 * @param about its line for people
 * @param fit whether it is the instrument's
 * @param reason why, in words
 * @param steps the questions that were asked for it, in their order
 */
public record ProbedProfile(
    String profile, String about, Fit fit, String reason, List<ProbeStep> steps) {

  /** Whether a profile is the instrument's. */
  public enum Fit {
    /** All that it asks for is so. */
    FITS,
    /** Something is not so. */
    DOES_NOT_FIT,
    /** Nothing was asked: a profile that fits better needs no others. */
    NOT_ASKED
  }

  /** Takes its own copy. */
  public ProbedProfile {
    steps = List.copyOf(steps);
  }
}
