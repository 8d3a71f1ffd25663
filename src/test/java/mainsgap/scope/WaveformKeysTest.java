package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import mainsgap.settings.SettingsException;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One thing wrong in the state or the waveform of a profile: file, line and key are named. */
class WaveformKeysTest {
  private static final String NAMED = "named-value-preamble";
  private static final String VOLTS = "values-in-volts";
  private static final String SINGLE = "single-scale-queries";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        NAMED + " | volts-per-code = | # | waveform.values' has no 'volts-per-code'",
        NAMED
            + " | preamble = \":WFMO?\" | # | waveform.words.code-kind.name' is looked for in a preamble: write its query as 'preamble'",
        NAMED
            + " | { name = \"YMULT\" } | { name = \"YMULT\", query = \":Y?\" } | waveform.values.volts-per-code' needs one of: name, query, value",
        NAMED
            + " | { name = \"YMULT\" } | { name = \"YMULT\", times = 0 } | waveform.values.volts-per-code.times' is 0",
        NAMED
            + " | { name = \"YMULT\" } | { nam = \"YMULT\" } | waveform.values.volts-per-code.nam' is not a key that is known here; allowed: name, query, value, times, inverse",
        NAMED
            + " | volts-per-code = | volt-per-code = | waveform.values.volt-per-code' is not a key that is known here; allowed: ",
        NAMED
            + " | Y = \"samples\" | Y = \"points\" | waveform.words.point-kind.words.Y' is 'points'; allowed: samples, pairs",
        NAMED
            + " | highest-code = 32_752 | highest-code = -40_000 | waveform.highest-code' is not above 'lowest-code'",
        NAMED
            + " | query = \":TRIG:STATE?\" | query = \"*OPC?\" | state.query' is *OPC?, which answers at once or blocks",
        NAMED
            + " | data = \":CURV?\" | numbers = \"ascii\" | waveform.numbers' is not a key that is known here",
        VOLTS
            + " | numbers = \"real-32\" | numbers = \"ascii\" | waveform.byte-order' is for blocks of bytes, not for text",
        VOLTS + " | byte-order = \"lsb-first\" | # | waveform.byte-order' is missing",
        VOLTS
            + " | numbers = \"real-32\" | numbers = \"real-64\" | waveform.numbers' is 'real-64'; allowed: real-32, ascii",
        VOLTS
            + " | interval-seconds = { | volts-per-code = { | waveform.values.volts-per-code' is not a key that is known here",
        VOLTS + " | clears-when-read = true | clears-when-read = 1 | state.clears-when-read' is ",
        SINGLE
            + " | { value = 128 } | { value = 128, times = 2 } | waveform.values.reference-code.times' does not go with 'value'",
        SINGLE
            + " | query = \":WAV:STAT?\" | # | waveform.prepare.ready' needs a 'query' beside it",
        SINGLE
            + " | each = \"part\" | each = \"chunk\" | waveform.prepare.each' is 'chunk'; allowed: record, part",
        SINGLE
            + " | ready = \"IDLE,.*\" | ready = \"(\" | waveform.prepare.ready' is not a regular expression",
        SINGLE + " | ready = \"IDLE,.*\" | # | waveform.prepare.ready' is missing",
        SINGLE
            + " | otherwise = \"filling\" | query = \":X?\" | state' needs either one 'query' or 'questions'",
        SINGLE
            + " | bits = [{ bit = 0, means = \"recording\" }] | words = { A = \"idle\" } | state.questions[2].clears-when-read' is for 'bits' alone",
        SINGLE
            + " | bits = [{ bit = 3, clear = true, means = \"idle\" }] | words = { A = \"idle\" } | state.questions[2].query' is never asked",
        SINGLE
            + " | { bit = 3, clear | { bit = 32, clear | state.questions[1].bits[1].bit' is 32; allowed: 0 to 31",
      })
  void complaintNamesFileLineAndKey(
      String profile, String good, String bad, String sentence, @TempDir Path folder)
      throws IOException {
    List<String> lines = Files.readAllLines(ShippedProfilesTest.FOLDER.resolve(profile + ".toml"));
    int at = 0;
    while (lines.get(at).startsWith("#") || !inWaveformOrState(lines, at, good)) {
      at++;
    }
    String line = lines.get(at);
    lines.set(at, bad.equals("#") ? "" : line.replace(good, bad));
    Files.write(folder.resolve("mine.toml"), lines);
    String message =
        String.valueOf(
            assertThrows(SettingsException.class, () -> InstrumentProfiles.load(folder))
                .getMessage());
    assertTrue(message.matches("mine\\.toml line [0-9]+: '.*"), message);
    String told = message.replaceFirst("mine\\.toml line [0-9]+: '", "");
    assertEquals(sentence, told.substring(0, Math.min(told.length(), sentence.length())));
    int named = Integer.parseInt(message.replaceFirst("mine\\.toml line ([0-9]+).*", "$1"));
    assertTrue(named > 1 && named <= lines.size(), message);
  }

  private static boolean inWaveformOrState(List<String> lines, int at, String good) {
    boolean begun = lines.subList(0, at + 1).stream().anyMatch(line -> line.equals("[state]"));
    return begun && lines.get(at).contains(good);
  }
}
