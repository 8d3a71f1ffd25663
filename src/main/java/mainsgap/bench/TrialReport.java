package mainsgap.bench;

import java.time.Instant;
import mainsgap.transfer.Judgement;
import mainsgap.transfer.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * A logged trial without its raw capture, which stays in the session.
 *
 * @param number its number in the session
 * @param at when its capture was read
 * @param outcome the measurement
 * @param judgement against the declared claim; null where none is given or the trial is refused
 */
public record TrialReport(int number, Instant at, Outcome outcome, @Nullable Judgement judgement) {}
