package mainsgap.session;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import mainsgap.transfer.claim.DecisionRule;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import org.jspecify.annotations.Nullable;

/**
 * What holds for a whole session: its first entry.
 *
 * @param startedAt when the session was made
 * @param programVersion the version of Mainsgap that made it
 * @param simulated whether the unit and the instrument are simulated
 * @param unit the specimen's name, as the user gives it
 * @param claim the declared transfer time; null where none is given
 * @param task the event and the nominal values
 * @param instrument the instrument's identity and the name of its profile
 * @param rig channels, probe factors, ratings, catch method, settling time ... as words and values
 * @param conditions serial, firmware, load, state of charge ... as words and values
 */
public record SessionHeader(
    Instant startedAt,
    String programVersion,
    boolean simulated,
    String unit,
    @Nullable DeclaredClaim claim,
    MeasuringTask task,
    String instrument,
    Map<String, String> rig,
    Map<String, String> conditions) {

  /** The name among the rig's words under which the rule stands that the trials are judged by. */
  public static final String DECISION_RULE = "decision rule";

  /** Takes its own copies, which keep the order. */
  public SessionHeader {
    rig = Collections.unmodifiableMap(new LinkedHashMap<>(rig));
    conditions = Collections.unmodifiableMap(new LinkedHashMap<>(conditions));
  }

  /**
   * The rule that the trials are judged by; the default where none is named.
   *
   * @throws SessionException if a rule is named that this program does not know
   */
  public DecisionRule decisionRule() {
    String word = rig.get(DECISION_RULE);
    if (word == null) {
      return DecisionRule.GUARDED;
    }
    return DecisionRule.ofWord(word)
        .orElseThrow(
            () ->
                new SessionException(
                    "the session is judged by the decision rule '"
                        + word
                        + "', which this program does not know: a newer one made it"));
  }
}
