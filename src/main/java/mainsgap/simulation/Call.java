package mainsgap.simulation;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * One command as it came: the numeric suffix of its header (1 where it has none) and its
 * parameters.
 */
record Call(int suffix, List<String> parameters) {

  /** A number in any of the forms NR1, NR2 and NR3 of IEEE 488.2. */
  private static final Pattern NRF =
      Pattern.compile("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]{1,3})?");

  Call {
    parameters = List.copyOf(parameters);
  }

  /** The one parameter. */
  String word() {
    if (parameters.isEmpty()) {
      throw new ScpiFault(ScpiError.MISSING_PARAMETER);
    }
    if (parameters.size() > 1) {
      throw new ScpiFault(ScpiError.PARAMETER_NOT_ALLOWED);
    }
    return parameters.get(0);
  }

  void expectNone() {
    if (!parameters.isEmpty()) {
      throw new ScpiFault(ScpiError.PARAMETER_NOT_ALLOWED);
    }
  }

  /** The one parameter as a number within limits. */
  double number(double lowest, double highest) {
    String word = word();
    if (!NRF.matcher(word).matches()) {
      throw new ScpiFault(ScpiError.DATA_TYPE);
    }
    double number = Double.parseDouble(word);
    if (!(number >= lowest && number <= highest)) {
      throw new ScpiFault(ScpiError.DATA_OUT_OF_RANGE);
    }
    return number;
  }

  /** The one parameter as a whole number within limits; fractions are rounded. */
  int whole(int lowest, int highest) {
    return (int) Math.round(number(lowest, highest));
  }

  /** One of several parameters, counted from 0, as a whole number within limits. */
  int whole(int index, int lowest, int highest) {
    if (index >= parameters.size()) {
      throw new ScpiFault(ScpiError.MISSING_PARAMETER);
    }
    return new Call(suffix, List.of(parameters.get(index))).whole(lowest, highest);
  }

  /** The one parameter as a word of a list, in upper case. */
  String oneOf(String... allowed) {
    String word = word().toUpperCase(Locale.ROOT);
    if (!List.of(allowed).contains(word)) {
      throw new ScpiFault(ScpiError.ILLEGAL_PARAMETER_VALUE);
    }
    return word;
  }

  /** The one parameter as a switch. */
  boolean onOrOff() {
    String word = oneOf("ON", "OFF", "1", "0");
    return word.equals("ON") || word.equals("1");
  }

  /** The number at the end of a name such as CH2 or CHAN2, within 1 and {@code highest}. */
  int numberAfter(String name, int highest) {
    String word = word().toUpperCase(Locale.ROOT);
    String digits = word.startsWith(name) ? word.substring(name.length()) : "";
    if (!digits.matches("[0-9]{1,3}")) {
      throw new ScpiFault(ScpiError.ILLEGAL_PARAMETER_VALUE);
    }
    int number = Integer.parseInt(digits);
    if (number < 1 || number > highest) {
      throw new ScpiFault(ScpiError.DATA_OUT_OF_RANGE);
    }
    return number;
  }
}
