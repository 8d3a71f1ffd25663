package mainsgap.scope;

import java.util.OptionalInt;

/**
 * Codes whose meaning is asked for by one query with ten numbers.
 *
 * @param preamble the query
 * @param scaling what the ninth of them, yorigin, is
 * @param layout how a code stands in the data, which the ten numbers don't say reliably
 */
record TenFields(CommandTemplate preamble, Scaling scaling, CodeLayout layout)
    implements RecordDescriber {

  /** What the ninth of the ten fields, yorigin, is. */
  enum Scaling {
    /** Volts: {@code (code - yreference) * yincrement + yorigin}. */
    ORIGIN_IN_VOLTS,
    /** Codes: {@code (code - yreference - yorigin) * yincrement}. */
    ORIGIN_IN_CODES
  }

  @Override
  public RecordDescription describe(Asking asking) {
    Preamble said = Preamble.of(asking.numbers(preamble));
    return new RecordDescription(
        OptionalInt.of(said.points()),
        said.firstSampleSeconds(),
        said.x().increment(),
        layout,
        said.scale(scaling));
  }
}
