package mainsgap.cli;

import mainsgap.bench.SeriesRequest;
import mainsgap.signal.Event;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What the supply is and what is declared of the unit: the same for captures and for trials. */
final class SupplyOptions {
  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec command;

  @Option(
      names = "--rated",
      paramLabel = "TIME",
      converter = RatedTime.Converter.class,
      description =
          "Declared transfer time with its unit, such as 20ms, 0.02s or '<20ms', where at 20 ms it"
              + " is not met. Without it nothing is judged.")
  private @Nullable RatedTime rated;

  @Option(
      names = "--rated-kind",
      paramLabel = "KIND",
      converter = RatedKindWord.class,
      description =
          "What that time is said to be: maximum; typical, which is compared with the median of a"
              + " series and never judged as a maximum; or unstated (default), judged as a maximum.")
  private DeclaredClaim.@Nullable Kind ratedKind;

  @Option(
      names = "--decision-rule",
      paramLabel = "RULE",
      converter = DecisionRuleWord.class,
      description =
          "By which rule the declared time is judged. guarded (default): pass and fail both need U"
              + " as a margin, else inconclusive. simple: within or not, whatever U. two-way: pass"
              + " needs U as a margin, all else fails. four-way: pass, conditional pass, conditional"
              + " fail, fail. Agree on it before you measure.")
  private @Nullable DecisionRule rule;

  @Option(
      names = "--nominal",
      paramLabel = "VOLTS",
      description = "Nominal voltage in V RMS (default: 230).")
  private @Nullable Double nominalVolts;

  @Option(
      names = "--frequency",
      paramLabel = "HZ",
      description = "Nominal frequency in Hz, 40 to 70 (default: 50).")
  private @Nullable Double frequencyHertz;

  @Option(
      names = "--event",
      paramLabel = "EVENT",
      converter = EventWord.class,
      description =
          "loss: mains is lost, the unit takes over (default). restoration: mains is back,"
              + " the unit gives over.")
  private @Nullable Event event;

  /** The declared transfer time, as typed. */
  @Nullable DeclaredClaim claim() {
    if (rated == null) {
      if (ratedKind != null) {
        throw wrong("--rated-kind tells what a declared time is: add --rated TIME");
      }
      return null;
    }
    return rated.claim(ratedKind == null ? DeclaredClaim.Kind.UNSTATED : ratedKind);
  }

  /** The rule by which it is judged. */
  DecisionRule rule() {
    return rule(null);
  }

  /** The rule by which it, or else {@code otherClaim}, is judged. */
  DecisionRule rule(@Nullable DeclaredClaim otherClaim) {
    if (rule != null && rated == null && otherClaim == null) {
      throw wrong("--decision-rule judges a declared time: add --rated TIME");
    }
    return rule == null ? DecisionRule.GUARDED : rule;
  }

  /** The nominal voltage in V RMS; null where none is given. */
  @Nullable Double nominalVolts() {
    if (nominalVolts != null && !(nominalVolts > 0 && nominalVolts <= 1000)) {
      throw wrong("--nominal is a voltage above 0 and up to 1000 V RMS, found " + nominalVolts);
    }
    return nominalVolts;
  }

  /** The nominal frequency in Hz; null where none is given. */
  @Nullable Double frequencyHertz() {
    if (frequencyHertz != null && !(frequencyHertz >= 40 && frequencyHertz <= 70)) {
      throw wrong("--frequency is 40 to 70 Hz, found " + frequencyHertz);
    }
    return frequencyHertz;
  }

  /** What is to be measured, with the defaults where nothing is given. */
  MeasuringTask task() {
    Double volts = nominalVolts();
    Double hertz = frequencyHertz();
    return new MeasuringTask(
        eventOr(null),
        volts == null ? SeriesRequest.DEFAULT_VOLTS : volts,
        hertz == null ? SeriesRequest.DEFAULT_HERTZ : hertz);
  }

  /** The event, or else what a plan says, or else the loss. */
  Event eventOr(@Nullable Event planned) {
    if (event != null) {
      return event;
    }
    return planned == null ? Event.LOSS : planned;
  }

  /** Wrong use of the command that has these options. */
  ParameterException wrong(String sentence) {
    if (command == null) {
      throw new IllegalStateException("the options belong to no command");
    }
    return new ParameterException(command.commandLine(), sentence);
  }
}
