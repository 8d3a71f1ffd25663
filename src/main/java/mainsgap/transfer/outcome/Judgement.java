package mainsgap.transfer.outcome;

/**
 * An outcome held against a declared transfer time.
 *
 * @param verdict in three words
 * @param decisionRule the name of the rule by which it was reached
 * @param ruleOutcome the rule's own word for it
 * @param reason one sentence for people
 */
public record Judgement(Verdict verdict, String decisionRule, String ruleOutcome, String reason) {}
