package mainsgap.transfer;

import java.util.function.Supplier;
import mainsgap.signal.FitException;
import mainsgap.transfer.outcome.CannotMeasureException;
import org.jspecify.annotations.Nullable;

/**
 * A look at a place beside the one that was found. That it cannot be measured there says nothing of
 * the capture, whose own reason, or result, stands.
 */
final class Tried {
  private Tried() {}

  /** What was found there; null where it is none, or none that can be measured. */
  static @Nullable FoundEvent orNull(Supplier<@Nullable FoundEvent> look) {
    try {
      return look.get();
    } catch (CannotMeasureException | FitException e) {
      return null;
    }
  }
}
