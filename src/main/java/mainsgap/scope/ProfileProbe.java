package mainsgap.scope;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import mainsgap.scope.InstrumentProfile.Probe;
import mainsgap.scope.ProbedProfile.Fit;
import mainsgap.scpi.Identity;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.waiting.StopRequest;

/**
 * Looks which profile fits an instrument: by what it says of itself, then by queries that change
 * nothing. Profiles that name the family come first; where one of them fits, those without a name
 * are not asked for. A query that several profiles share is asked once.
 */
final class ProfileProbe {
  private final InstrumentProfiles profiles;
  private final ProbeQuestions questions;
  private final StopRequest stop;
  private final Consumer<ProbeStep> listener;
  private final Map<String, ProbeStep> asked = new HashMap<>();

  /** A probe that tells {@code listener} of each question once it is through. */
  ProfileProbe(
      InstrumentProfiles profiles,
      ScpiInstrument instrument,
      StopRequest stop,
      Consumer<ProbeStep> listener) {
    this.profiles = profiles;
    this.questions = new ProbeQuestions(instrument);
    this.stop = stop;
    this.listener = listener;
  }

  ProbeReport run() {
    Identity identity = questions.identity();
    List<ProbedProfile> found = new ArrayList<>();
    for (InstrumentProfile profile : profiles.all()) {
      if (profile.identification().pattern() != null) {
        found.add(named(profile, identity));
      }
    }
    boolean known = found.stream().anyMatch(probed -> probed.fit() == Fit.FITS);
    for (InstrumentProfile profile : profiles.all()) {
      if (profile.identification().pattern() == null) {
        found.add(known ? notAsked(profile) : questioned(profile, ""));
      }
    }
    return new ProbeReport(identity, found);
  }

  /** Whether the identity is one that the profile's pattern names. */
  static boolean isNamed(InstrumentProfile profile, Identity identity) {
    Pattern pattern = profile.identification().pattern();
    String answer =
        String.join(
            ",", identity.manufacturer(), identity.model(), identity.serial(), identity.firmware());
    return pattern != null && pattern.matcher(answer).find();
  }

  private ProbedProfile named(InstrumentProfile profile, Identity identity) {
    return isNamed(profile, identity)
        ? questioned(profile, "the answer to *IDN? is of its pattern")
        : new ProbedProfile(
            profile.name(),
            profile.about(),
            Fit.DOES_NOT_FIT,
            "the answer to *IDN? is not of its pattern '"
                + profile.identification().pattern()
                + "'",
            List.of());
  }

  private static ProbedProfile notAsked(InstrumentProfile profile) {
    return new ProbedProfile(
        profile.name(),
        profile.about(),
        Fit.NOT_ASKED,
        "a profile that names the instrument fits already",
        List.of());
  }

  private ProbedProfile questioned(InstrumentProfile profile, String byName) {
    List<ProbeStep> steps = new ArrayList<>();
    for (Probe probe : profile.identification().probes()) {
      ProbeStep step = step(probe);
      steps.add(step);
      if (!step.fits()) {
        return result(profile, Fit.DOES_NOT_FIT, refusal(step), steps);
      }
    }
    String all = steps.isEmpty() ? "" : "every answer is of the form that it asks for";
    String reason = byName.isEmpty() || all.isEmpty() ? byName + all : byName + ", and " + all;
    return result(profile, Fit.FITS, reason, steps);
  }

  private static ProbedProfile result(
      InstrumentProfile profile, Fit fit, String reason, List<ProbeStep> steps) {
    return new ProbedProfile(profile.name(), profile.about(), fit, reason, steps);
  }

  private static String refusal(ProbeStep step) {
    return switch (step.answer()) {
      case ANSWERED -> "the answer to " + step.query() + " is not of the form that it asks for";
      case SILENT -> "no answer came to " + step.query();
      case UNUSABLE -> "no usable answer came to " + step.query();
      case BROKE_OFF -> "the instrument broke off at " + step.query();
    };
  }

  private ProbeStep step(Probe probe) {
    stop.throwIfRequested();
    String query = probe.query().filled(Map.of());
    ProbeStep before = asked.get(query);
    ProbeStep now = before == null ? questions.ask(query) : before;
    asked.put(query, now);
    ProbeStep step =
        new ProbeStep(
            query,
            probe.reply().pattern(),
            now.answer(),
            now.text(),
            now.errors(),
            now.queueAnswered(),
            now.answer() == ProbeStep.Answer.ANSWERED
                && probe.reply().matcher(now.text()).matches());
    if (before == null) {
      listener.accept(step);
    }
    return step;
  }
}
