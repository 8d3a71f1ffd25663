package mainsgap.scope;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import mainsgap.signal.Scale;

/**
 * Values that are found one by one, each by its name in a preamble or by a query of its own: {@code
 * volts = (code - reference) * step + origin}, {@code seconds = first + (i - reference) *
 * interval}. What is not told is what was set.
 *
 * @param preamble the query whose reply holds names and values
 * @param numbers where each number is found
 * @param words where each word is found
 * @param layout what the words don't say
 */
record ScaleValues(
    Optional<CommandTemplate> preamble,
    Map<ScaleNumber, NumberSource> numbers,
    ScaleWords words,
    CodeLayout layout)
    implements RecordDescriber {

  /** Takes its own copy, in one order: an instrument is asked in the same order always. */
  ScaleValues {
    EnumMap<ScaleNumber, NumberSource> copy = new EnumMap<>(ScaleNumber.class);
    copy.putAll(numbers);
    numbers = Collections.unmodifiableMap(copy);
  }

  @Override
  public RecordDescription describe(Asking asking) {
    NamedValues named =
        preamble.map(query -> NamedValues.of(asking.text(query))).orElse(NamedValues.NONE);
    CodeLayout told = words.layout(layout, asking, named);
    Map<ScaleNumber, Double> found = found(told, asking, named);
    Double bytes = found.get(ScaleNumber.BYTES_PER_CODE);
    return described(asking.record(), found, bytes == null ? told : ofWidth(told, bytes));
  }

  private Map<ScaleNumber, Double> found(CodeLayout told, Asking asking, NamedValues named) {
    Map<ScaleNumber, Double> found = new EnumMap<>(ScaleNumber.class);
    numbers.forEach(
        (number, source) -> {
          // where volts come as they are, a scale for codes may be missing
          if (!(told.isVolts() && number.isVertical())) {
            found.put(number, number.checked(source.in(asking, named)));
          }
        });
    return found;
  }

  private static RecordDescription described(
      AppliedRecord set, Map<ScaleNumber, Double> found, CodeLayout layout) {
    double interval = value(found, ScaleNumber.INTERVAL_SECONDS, set.intervalSeconds());
    double first = value(found, ScaleNumber.FIRST_SAMPLE_SECONDS, set.firstSampleSeconds());
    double reference = value(found, ScaleNumber.REFERENCE_SAMPLE, 0);
    OptionalInt points =
        found.containsKey(ScaleNumber.POINTS)
            ? OptionalInt.of((int) value(found, ScaleNumber.POINTS, 0))
            : OptionalInt.empty();
    return new RecordDescription(
        points, first - reference * interval, interval, layout, scale(found, layout));
  }

  private static Scale scale(Map<ScaleNumber, Double> found, CodeLayout layout) {
    if (layout.isVolts()) {
      return Scale.VOLTS;
    }
    return new Scale(
        value(found, ScaleNumber.REFERENCE_CODE, 0) + value(found, ScaleNumber.ORIGIN_CODES, 0),
        value(found, ScaleNumber.VOLTS_PER_CODE, 1),
        value(found, ScaleNumber.ORIGIN_VOLTS, 0),
        Double.NEGATIVE_INFINITY,
        Double.POSITIVE_INFINITY);
  }

  private static CodeLayout ofWidth(CodeLayout layout, double bytes) {
    boolean fits = layout.isVolts() ? bytes == Float.BYTES : bytes == 1 || bytes == 2;
    if (!fits) {
      throw new ScopeException(
          "the instrument says that a sample takes "
              + Words.plain(bytes, 6)
              + " bytes, expected "
              + (layout.isVolts() ? "4" : "1 or 2")
              + ": set its width by 'waveform.select' in its profile");
    }
    return new CodeLayout(layout.kind(), (int) bytes, layout.lsbFirst());
  }

  private static double value(
      Map<ScaleNumber, Double> found, ScaleNumber number, double otherwise) {
    return found.getOrDefault(number, otherwise);
  }
}
