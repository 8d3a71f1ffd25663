package mainsgap.transfer.outcome;

import org.jspecify.annotations.Nullable;

/**
 * What the fitted supplies before and after the event say; null where a capture cannot tell.
 *
 * @param frequencyHertz the frequency of the supply before
 * @param frequencyStepMillihertz the supply after minus the supply before
 * @param amplitudeStepPercent the change of the fundamental's amplitude in per cent of nominal
 * @param phaseStepDegrees the supply after minus the supply before, both taken at the return, -180
 *     (exclusive) to 180 (inclusive)
 */
public record Supplies(
    double frequencyHertz,
    @Nullable Double frequencyStepMillihertz,
    @Nullable Double amplitudeStepPercent,
    @Nullable Double phaseStepDegrees) {}
