package mainsgap.session;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import mainsgap.session.CaptureUnits.Quantity;
import mainsgap.session.CaptureUnits.Unit;

/** The sample interval that a preamble tells, as an interval or as a rate. */
final class CaptureInterval {
  private static final Pattern INTERVAL =
      Pattern.compile(
          "(sample |sampling |time )?(interval|increment|period)|x ?incr?(ement)?|dt|delta t");
  private static final Pattern RATE = Pattern.compile("(sample|sampling) ?(rate|frequency)|fs");

  private CaptureInterval() {}

  /** The interval in seconds, where a line before the table tells one. */
  static OptionalDouble in(CaptureTable table, List<String> lines) {
    for (int row = 0; row < table.firstRow(); row++) {
      List<String> fields = fields(lines.get(row), table.delimiter());
      for (int i = 0; i < fields.size(); i++) {
        String word = CaptureUnits.nameOf(fields.get(i)).toLowerCase(Locale.ROOT);
        boolean isRate = RATE.matcher(word).matches();
        if (isRate || INTERVAL.matcher(word).matches()) {
          List<String> below = fields(lines.get(row + 1), table.delimiter());
          double value = valueBeside(fields, i);
          double told = Double.isNaN(value) ? valueAt(below, i) : value;
          double seconds = told * factor(fields, i, isRate);
          if (seconds > 0 && Double.isFinite(seconds)) {
            return OptionalDouble.of(isRate ? 1 / seconds : seconds);
          }
        }
      }
    }
    return OptionalDouble.empty();
  }

  /** A preamble may part its fields otherwise than the table, by a colon or equals sign too. */
  private static List<String> fields(String line, char delimiter) {
    for (char parting : new char[] {delimiter, ',', ';', '\t', ':', '='}) {
      List<String> fields =
          parting == CaptureFields.SPACES ? List.of() : CaptureFields.split(line, parting);
      if (fields.size() > 1) {
        return fields;
      }
    }
    return List.of(line.strip());
  }

  private static double valueBeside(List<String> fields, int index) {
    return valueAt(fields, index + 1);
  }

  private static double valueAt(List<String> fields, int index) {
    return index < fields.size()
        ? CaptureFields.number(fields.get(index).split("\\s+", 2)[0])
        : Double.NaN;
  }

  /** The unit stands in the word, behind the value, or in the field after it. */
  private static double factor(List<String> fields, int index, boolean isRate) {
    Quantity due = isRate ? Quantity.FREQUENCY : Quantity.TIME;
    Unit unit = CaptureUnits.inHeader(fields.get(index));
    for (int at = index + 1; unit == null && at < fields.size() && at <= index + 2; at++) {
      String[] words = fields.get(at).split("\\s+", 2);
      unit = CaptureUnits.of(words[words.length - 1]);
    }
    return unit != null && unit.quantity() == due ? unit.factor() : 1;
  }
}
