package mainsgap.scope;

import java.util.OptionalInt;
import mainsgap.signal.Scale;

/**
 * What an instrument says of the samples that it is about to send.
 *
 * @param points their number, where it says so
 * @param firstSampleSeconds the time of the first sample, the trigger being at 0
 * @param intervalSeconds the sample interval
 * @param layout how a sample stands in the data
 * @param scale from a code to the instrument's own volts, without rails
 */
record RecordDescription(
    OptionalInt points,
    double firstSampleSeconds,
    double intervalSeconds,
    CodeLayout layout,
    Scale scale) {}
