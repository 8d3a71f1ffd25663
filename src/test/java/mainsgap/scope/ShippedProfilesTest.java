package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The profiles that go with the program. */
class ShippedProfilesTest {
  static final Path FOLDER = Path.of("instrument-profiles");

  private final InstrumentProfiles profiles = InstrumentProfiles.load(FOLDER);

  @Test
  void allAreRead() {
    assertEquals(
        List.of(
            "named-value-preamble",
            "scpi-1999-digitizer",
            "single-scale-queries",
            "ten-field-preamble",
            "values-in-volts"),
        profiles.all().stream().map(InstrumentProfile::name).toList());
  }

  @Test
  void eachOffersTheTriggersThatFireOnTime() {
    assertEquals(
        EnumSet.of(CatchMethod.FORCED_RECORD, CatchMethod.BACK_TO_BACK_RECORDS),
        profiles.named("scpi-1999-digitizer").limits().methods());
    assertEquals(
        EnumSet.complementOf(EnumSet.of(CatchMethod.INTERVAL_TRIGGER)),
        profiles.named("ten-field-preamble").limits().methods());
  }

  @Test
  void anUnknownNameIsAnsweredWithTheKnownOnes() {
    ScopeException refused = assertThrows(ScopeException.class, () -> profiles.named("ten-fields"));
    assertEquals(
        "there is no instrument profile 'ten-fields'; there are: named-value-preamble,"
            + " scpi-1999-digitizer, single-scale-queries, ten-field-preamble, values-in-volts",
        refused.getMessage());
  }
}
