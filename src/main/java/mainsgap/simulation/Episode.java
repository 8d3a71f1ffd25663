package mainsgap.simulation;

import org.jspecify.annotations.Nullable;

/**
 * One movement of the mains switch and all that comes of it, on an axis whose 0 s is the movement.
 * Before it the bench has been at rest for ever, and long after it it is at rest again.
 *
 * @param output the voltage at the load
 * @param mains the voltage downstream of the mains switch
 * @param signals the small isolated signals
 * @param settledSeconds from when the bench is at rest again
 * @param truth what happened, on this axis; null where no supply was changed
 * @param placeInForcedRecord where in a running record the movement comes, as a fraction of it
 * @param noiseSeed for the noise of the records taken of it
 */
record Episode(
    Voltage output,
    Voltage mains,
    SignalWires signals,
    double settledSeconds,
    @Nullable TrialTruth truth,
    double placeInForcedRecord,
    long noiseSeed) {}
