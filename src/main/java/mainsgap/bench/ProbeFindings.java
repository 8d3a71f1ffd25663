package mainsgap.bench;

import java.util.List;
import java.util.Optional;
import mainsgap.scope.ProbeReport;
import mainsgap.scope.ProbedProfile;

/**
 * What a probe found.
 *
 * @param identity who the instrument says it is
 * @param profiles each profile, and why it fits or does not
 * @param chosen the one that fits; empty where none or several do
 * @param sentence what it comes to
 */
public record ProbeFindings(
    String identity, List<Profile> profiles, Optional<String> chosen, String sentence) {

  /** Whether a profile is the instrument's. */
  public enum Fit {
    /** It is. */
    FITS("fits"),
    /** It is not. */
    DOES_NOT_FIT("does not fit"),
    /** Nothing was asked for it. */
    NOT_ASKED("not asked");

    private final String words;

    Fit(String words) {
      this.words = words;
    }

    /** Some words. */
    public String words() {
      return words;
    }
  }

  /**
   * One profile.
   *
   * @param name by which a user chooses it
   * @param about its line for people
   * @param fit whether it is the instrument's
   * @param reason why
   * @param questions what was asked for it
   */
  public record Profile(
      String name, String about, Fit fit, String reason, List<ProbedQuestion> questions) {}

  static ProbeFindings of(ProbeReport report) {
    return new ProbeFindings(
        Words.printable(report.identity().toString()),
        report.profiles().stream().map(ProbeFindings::of).toList(),
        report.chosen(),
        Words.printable(report.sentence()));
  }

  private static Profile of(ProbedProfile probed) {
    return new Profile(
        probed.profile(),
        probed.about(),
        switch (probed.fit()) {
          case FITS -> Fit.FITS;
          case DOES_NOT_FIT -> Fit.DOES_NOT_FIT;
          case NOT_ASKED -> Fit.NOT_ASKED;
        },
        probed.reason(),
        probed.steps().stream().map(ProbedQuestion::of).toList());
  }

  /** Whether at least one profile fits. */
  public boolean isKnown() {
    return profiles.stream().anyMatch(profile -> profile.fit() == Fit.FITS);
  }
}
