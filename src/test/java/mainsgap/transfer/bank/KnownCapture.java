package mainsgap.transfer.bank;

import java.util.function.DoubleSupplier;
import mainsgap.signal.Capture;
import mainsgap.transfer.outcome.MeasuringTask;

/**
 * A generated capture with the truth that made it.
 *
 * @param locationBound gives the bound of {@link LocationBound} in seconds
 */
public record KnownCapture(
    Capture capture, MeasuringTask task, Truth truth, DoubleSupplier locationBound) {}
