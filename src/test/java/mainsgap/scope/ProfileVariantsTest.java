package mainsgap.scope;

import static mainsgap.scope.EveryProfileTest.assertAsRecorded;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import mainsgap.link.ResourceName;
import mainsgap.signal.Capture;
import mainsgap.simulation.PreambleVariant;
import mainsgap.simulation.ScopeFault;
import mainsgap.simulation.ScopeQuirk;
import mainsgap.simulation.SimulatedBench;
import mainsgap.simulation.SimulatedBenchSettings;
import mainsgap.simulation.SimulatedInstrument;
import mainsgap.simulation.SimulatedUnit;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Shipped profiles with some lines changed, as a user changes them for a model of the family. */
class ProfileVariantsTest {
  private static final String NAMED = "named-value-preamble";
  private static final String VOLTS = "values-in-volts";
  private static final SimulatedBenchSettings BENCH =
      SimulatedBenchSettings.of(SimulatedUnit.STANDBY, 7);

  private final Path folder;

  ProfileVariantsTest(@TempDir Path folder) {
    this.folder = folder;
  }

  /** With an offset the two readings of yorigin differ, and the wrong one is found. */
  @ParameterizedTest
  @EnumSource(PreambleVariant.class)
  void eachScalingGivesTheVoltsThatWereRecorded(PreambleVariant variant) throws IOException {
    SimulatedBenchSettings bench =
        BENCH.withScope(new SimulatedBenchSettings.Scope(12, variant, ScopeFault.NONE, Set.of()));
    String offset = "OFFS 0\"";
    String shifted = "OFFS {volts-per-division}\"";
    String scaling =
        "scaling = \"" + variant.name().toLowerCase(Locale.ROOT).replace('_', '-') + "\"";
    look(bench, "ten-field-preamble", offset, shifted, "scaling = \"origin-in-volts\"", scaling);
  }

  @Test
  void headersOffWithItemsAskedByQueriesGiveTheSameVolts() throws IOException {
    look(
        BENCH,
        NAMED,
        ":HEAD ON",
        ":HEAD OFF",
        "preamble = \":WFMO?\"\n",
        "",
        "{ name = \"NR_PT\" }",
        "{ query = \":WFMO:NR_P?\" }",
        "{ name = \"XINCR\" }",
        "{ query = \":WFMO:XIN?\" }",
        "{ name = \"XZERO\" }",
        "{ query = \":WFMO:XZE?\" }",
        "{ name = \"PT_OFF\" }",
        "{ query = \":WFMO:PT_O?\" }",
        "{ name = \"BYT_NR\" }",
        "{ query = \":WFMO:BYT_N?\" }",
        "{ name = \"YMULT\" }",
        "{ query = \":WFMO:YMU?\" }",
        "{ name = \"YOFF\" }",
        "{ query = \":WFMO:YOF?\" }",
        "{ name = \"YZERO\" }",
        "{ query = \":WFMO:YZE?\" }",
        "name = \"BN_FMT\"",
        "query = \":WFMO:BN_F?\"",
        "name = \"BYT_OR\"",
        "query = \":WFMO:BYT_O?\"",
        "name = \"PT_FMT\"",
        "query = \":WFMO:PT_F?\"");
  }

  @Test
  void headersOnWithItemsAskedByQueriesGiveTheSameVolts() throws IOException {
    look(BENCH, NAMED, "{ name = \"YMULT\" }", "{ query = \":WFMO:YMU?\" }");
  }

  /** Positions differ between generations: bare values are not taken for one of them. */
  @Test
  void bareValuesAreNotTakenByTheirPlace() {
    ScopeException refused =
        assertThrows(ScopeException.class, () -> look(BENCH, NAMED, ":HEAD ON", ":HEAD OFF"));
    assertTrue(
        String.valueOf(refused.getMessage())
            .contains("a value without a name: switch the instrument's headers on"),
        refused.getMessage());
  }

  /** Signed and unsigned, either byte first, floats: the preamble says which. */
  @ParameterizedTest
  @CsvSource({"RIB, -32768, 32752", "SRP, 0, 65520", "RPB, 0, 65520"})
  void everyEncodingGivesTheSameVolts(String encoding, String lowest, String highest)
      throws IOException {
    look(
        BENCH,
        NAMED,
        ":DAT:ENC SRI",
        ":DAT:ENC " + encoding,
        "lowest-code = -32_768",
        "lowest-code = " + lowest,
        "highest-code = 32_752",
        "highest-code = " + highest);
  }

  @ParameterizedTest
  @ValueSource(strings = {"FPB", "SFP"})
  void floatsOfACurveAreVolts(String encoding) throws IOException {
    look(
        BENCH,
        NAMED,
        ":DAT:ENC SRI",
        ":DAT:ENC " + encoding,
        "lowest-code = -32_768\n",
        "",
        "highest-code = 32_752",
        "");
  }

  @Test
  void pairsOfLowestAndHighestValuesAreRefused() {
    ScopeException refused =
        assertThrows(
            ScopeException.class, () -> look(BENCH, NAMED, ":ACQ:MOD SAM", ":ACQ:MOD ENV"));
    assertTrue(
        String.valueOf(refused.getMessage()).contains("in which no edge can be placed"),
        refused.getMessage());
  }

  @Test
  void voltsComeAsTextToo() throws IOException {
    look(
        BENCH,
        VOLTS,
        "numbers = \"real-32\"",
        "numbers = \"ascii\"",
        ":FORM REAL,32",
        ":FORM ASC",
        "byte-order = \"lsb-first\"\n",
        "",
        "chunk-samples = 200_000",
        "chunk-samples = 3_000");
  }

  @Test
  void theOtherByteOrderGivesTheSameVolts() throws IOException {
    look(BENCH, VOLTS, "LSBF", "MSBF", "byte-order = \"lsb-first\"", "byte-order = \"msb-first\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {VOLTS, "single-scale-queries"})
  void aHoleInTheRecordIsRefused(String profile) {
    SimulatedBenchSettings bench = BENCH.withQuirks(Set.of(ScopeQuirk.HOLE_IN_RECORD));
    ScopeException refused = assertThrows(ScopeException.class, () -> look(bench, profile));
    assertTrue(
        String.valueOf(refused.getMessage()).contains("the record has a hole or an overload"),
        refused.getMessage());
  }

  @Test
  void aPreparationThatDoesNotEndIsASentence() {
    ScopeException refused =
        assertThrows(
            ScopeException.class,
            () ->
                look(
                    BENCH,
                    "single-scale-queries",
                    "ready = \"IDLE,.*\"",
                    "ready = \"DONE\"",
                    "at-most-millis = 20_000",
                    "at-most-millis = 50"));
    String sentence = String.valueOf(refused.getMessage());
    assertTrue(sentence.startsWith("reading channel "), sentence);
    assertTrue(sentence.contains("to :WAV:STAT? after 50 ms, expected DONE"), sentence);
  }

  @Test
  void aFamilyWithStepsIsSetToOneOfThem() throws IOException {
    look(
        BENCH,
        NAMED,
        "horizontal-divisions = 10",
        "horizontal-divisions = 10\nrecord-lengths = [1000, 20_000, 1_000_000]\n"
            + "time-base-steps = \"one-two-five\"");
  }

  @Test
  void aWaitForEachSampleIsKept() throws IOException {
    look(
        BENCH,
        VOLTS,
        "[timing]",
        "[waveform.prepare]\nwait-micros-for-each-sample = 2.5\n\n[timing]\nsettled-query = \"*OPC?\"");
  }

  /** A look, which must show what was recorded. */
  private void look(SimulatedBenchSettings settings, String profile, String... changes)
      throws IOException {
    String text = Files.readString(ShippedProfilesTest.FOLDER.resolve(profile + ".toml"));
    for (int i = 0; i < changes.length; i += 2) {
      assertTrue(text.contains(changes[i]), "the profile has " + changes[i]);
      text = text.replace(changes[i], changes[i + 1]);
    }
    Files.writeString(folder.resolve("mine.toml"), text);
    try (SimulatedBench bench = SimulatedBench.start(settings);
        Oscilloscope scope =
            Oscilloscopes.open(
                ResourceName.parse(bench.resource(SimulatedInstrument.answeringTo(profile))),
                InstrumentProfiles.load(folder),
                "mine",
                Clock.system(),
                new StopRequest())) {
      scope.configure(EveryProfileTest.plan(scope, CatchMethod.FORCED_RECORD, 230));
      Capture look = scope.look();
      assertEquals(look.time().length(), look.output().length());
      assertAsRecorded(bench, profile, look);
    }
  }
}
