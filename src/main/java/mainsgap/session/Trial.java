package mainsgap.session;

import java.time.Instant;
import mainsgap.signal.Capture;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * One attempt that gave a capture, whatever came of it.
 *
 * @param number from 1, without gaps, refused trials counted
 * @param at when the capture was read
 * @param capture the raw capture
 * @param outcome the measurement of it
 * @param judgement against the declared claim; null where none is given or the trial is refused
 */
public record Trial(
    int number, Instant at, Capture capture, Outcome outcome, @Nullable Judgement judgement) {}
