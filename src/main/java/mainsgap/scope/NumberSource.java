package mainsgap.scope;

import mainsgap.scope.RecordDescriber.Asking;

/** Where a number is found that says what samples mean. */
sealed interface NumberSource {

  /** The number, from the preamble or by asking. */
  double in(Asking asking, NamedValues named);

  /** A number that the family always has. */
  record Fixed(double number) implements NumberSource {
    @Override
    public double in(Asking asking, NamedValues named) {
      return number;
    }
  }

  /** A value of the preamble. */
  record Named(String name, Conversion conversion) implements NumberSource {
    @Override
    public double in(Asking asking, NamedValues named) {
      return conversion.of(named.number(name));
    }
  }

  /** The answer to a query. */
  record Asked(CommandTemplate query, Conversion conversion) implements NumberSource {
    @Override
    public double in(Asking asking, NamedValues named) {
      return conversion.of(asking.number(query));
    }
  }

  /**
   * From the instrument's way of counting to ours.
   *
   * @param times what the answer is multiplied by
   * @param inverse whether one over the answer is meant
   */
  record Conversion(double times, boolean inverse) {
    double of(double answer) {
      return inverse ? times / answer : times * answer;
    }
  }
}
