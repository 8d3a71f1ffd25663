package mainsgap.transfer.instant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import mainsgap.transfer.TransferMeasurement;
import mainsgap.transfer.bank.Kind;
import mainsgap.transfer.bank.KnownCapture;
import mainsgap.transfer.outcome.Measured;
import mainsgap.transfer.outcome.OutcomeNotes;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RestReturnTest {
  private static final String IN_REST = "return: " + UncertaintyBudget.IN_REST;

  @Test
  void returnWithinARestIsSaidToBeOneAndItsIntervalHoldsIt() {
    KnownCapture known = Kind.QUASI_SQUARE_REST.capture(3);

    Measured measured = measured(known);

    double widest =
        measured.budget().components().stream()
            .mapToDouble(UncertaintyBudget.Component::standardMillis)
            .max()
            .orElseThrow();
    assertEquals(widest, rest(measured));
    assertTrue(OutcomeNotes.of(measured).get(0).startsWith("the return lies in a rest"));
    assertTrue(errorMillis(known, measured) <= measured.uncertaintyMillis());
  }

  @Test
  void returnOutsideARestIsLocatedToASample() {
    KnownCapture known = Kind.QUASI_SQUARE.capture(3);

    Measured measured = measured(known);

    assertEquals(0, rest(measured));
    assertFalse(measured.budget().isInRest("return"));
    assertTrue(errorMillis(known, measured) <= 2e-3 * known.truth().sampleMicros());
  }

  /** In them a make among the output's own steps was put into a rest, milliseconds off. */
  @ParameterizedTest
  @ValueSource(longs = {84, 105, 302, 352})
  void ownStepsHideNoReturn(long seed) {
    KnownCapture known = Kind.QUASI_SQUARE.capture(seed);

    assertTrue(errorMillis(known, measured(known)) <= 2e-3 * known.truth().sampleMicros());
  }

  /** In them it passes zero within 0.4 ms, with notches elsewhere in its cycle. */
  @ParameterizedTest
  @ValueSource(longs = {103, 120, 129, 231})
  void outputWithStepsThatPassesZeroHasNoRestThere(long seed) {
    KnownCapture known = Kind.NOTCHED.capture(seed);

    Measured measured = measured(known);

    assertEquals(0, rest(measured));
    assertTrue(errorMillis(known, measured) <= 0.025);
  }

  /** In them the make lies at a step of the output beside a rest of which nothing was dead. */
  @ParameterizedTest
  @ValueSource(longs = {153, 163})
  void stepBesideARestPassesNothing(long seed) {
    KnownCapture known = Kind.QUASI_SQUARE_REST.capture(seed);

    Measured measured = measured(known);

    assertTrue(errorMillis(known, measured) <= measured.uncertaintyMillis());
  }

  /** In them a dead load was taken for a supply that rests, or mains for its rest. */
  @ParameterizedTest
  @ValueSource(longs = {117, 149, 232})
  void shortGapBeforeARestIsMeasured(long seed) {
    KnownCapture known = Kind.QUASI_SQUARE_REST.capture(seed);

    Measured measured = measured(known);

    assertTrue(errorMillis(known, measured) <= measured.uncertaintyMillis());
  }

  private static Measured measured(KnownCapture known) {
    return (Measured) TransferMeasurement.measure(known.capture(), known.task());
  }

  private static double errorMillis(KnownCapture known, Measured measured) {
    return Math.abs(measured.transferMillis() - known.truth().transferMillis());
  }

  /** Of the budget's line for a rest; 0 where there is none. */
  private static double rest(Measured measured) {
    return measured.budget().components().stream()
        .filter(line -> line.name().equals(IN_REST))
        .mapToDouble(UncertaintyBudget.Component::standardMillis)
        .sum();
  }
}
