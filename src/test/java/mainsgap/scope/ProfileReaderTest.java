package mainsgap.scope;

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

/** One thing wrong in a good profile: the sentence names file, line and key. */
class ProfileReaderTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'channels = 4' | 'chanels = 4' | 'channels = 4' | 'limits.chanels'' is not a key that is known here; allowed: channels'",
        "'converter-bits = 12' | 'converter-bits = \"12\"' | 'converter-bits = 12' | 'limits.converter-bits'' is the text \"12\", expected a whole number'",
        "'time-base-ppm = 25' | 'time-base-ppm = -1' | 'time-base-ppm = 25' | 'limits.time-base-ppm'' is -1; allowed: 0 to 10000'",
        "'largest-record-samples = 2_000_000' | 'largest-record-samples = 10' | 'largest-record-samples = 2_000_000' | 'limits.largest-record-samples'' is 10; allowed: 1000 to 100000000'",
        "'\":TRIG:TIM:LEV {level-volts}\",' | '\":TRIG:TIM:LEV {level}\",' | 'commands = [ # either slope' | 'triggers.time-out.commands'' has the placeholder {level}, which does not exist; allowed here: {channel}, {level-volts}, {time-out-seconds}, in :TRIG:TIM:LEV {level}'",
        "'fires = \"on-time\" # by itself' | 'fires = \"late\"' | 'fires = \"on-time\" # by itself' | 'triggers.pulse-width.fires'' is ''late''; allowed: on-time, at-end'",
        "'fires = \"on-time\" # by itself' | '# none' | '[triggers.pulse-width]' | 'triggers.pulse-width.fires'' is missing: add it to this table'",
        "'[triggers.dropout]' | '[triggers.drop]' | '[triggers.dropout]' | 'triggers.drop'' is not a key that is known here; allowed: forced, time-out, dropout'",
        "'\":TRIG:WIND:LOW {lower-level-volts}\",' | '\":TRIG:WIND:LOW {level-volts}\",' | 'commands = [ # between' | 'triggers.window.commands'' has the placeholder {level-volts}, which has no value here'",
        "'arm = [\":SING\"]' | 'arm = [\":SING {channel}\"]' | 'arm = [\":SING\"]' | 'commands.arm'' has the placeholder {channel}, which has no value here'",
        "'arm = [\":SING\"]' | 'arm = []' | 'arm = [\":SING\"]' | 'commands.arm'' has no command: write at least one'",
        "'arm = [\":SING\"]' | 'arm = [\":STOP;:SING\"]' | 'arm = [\":SING\"]' | 'commands.arm'' is not one command of at most 200 characters'",
        "'arm = [\":SING\"]' | 'arm = [\":SING?\"]' | 'arm = [\":SING\"]' | 'commands.arm'' has the query :SING?: only commands without a reply'",
        "'arm = [\":SING\"]' | 'arm = [\":SING {\"]' | 'arm = [\":SING\"]' | 'commands.arm'' has a brace without its partner'",
        "'arm = [\":SING\"]' | 'arm = [\":SINGé\"]' | 'arm = [\":SING\"]' | 'commands.arm'' holds a character that no command has'",
        "'vertical-divisions = 8' | '# none' | 'channel-on = [' | 'commands.channel-on'' counts in divisions: set ''conventions.vertical-divisions'''",
        "'data = \":WAV:DATA?\"' | 'data = \":WAV:DATA\"' | 'data = \":WAV:DATA?\"' | 'waveform.data'' has no question mark: write a query'",
        "'scaling = \"origin-in-volts\"' | 'scaling = \"A\"' | 'scaling = \"origin-in-volts\"' | 'waveform.scaling'' is ''A''; allowed: origin-in-volts, origin-in-codes'",
        "'kind = \"ten-field-preamble\"' | 'kind = \"values-in-volts\"' | 'scaling = \"origin' | 'waveform.scaling'' is not a key that is known here'",
        "'gives = \"samples\"' | 'gives = \"points\"' | 'gives = \"samples\"' | 'read-back.samples.gives'' is ''points''; allowed: samples'",
        "'RUN = \"filling\"' | 'RUN = \"full\"' | 'RUN = \"filling\"' | 'state.words.RUN'' is ''full''; allowed: idle, filling, watching, recording, complete'",
        "'query = \":TRIG:STAT?\", reply = \"TD' | 'query = \":TRIG:STAT?\", reply = \"(TD' | 'query = \":TRIG:STAT?\", reply = \"TD' | 'identification.probes[1].reply'' is not a regular expression: '",
        "'format = 1' | 'format = 2' | 'format = 1' | 'format'' is 2; allowed: 1 to 1'",
      })
  void complaintNamesFileLineAndKey(
      String good, String bad, String lineWith, String sentence, @TempDir Path folder)
      throws IOException {
    List<String> lines =
        Files.readAllLines(ShippedProfilesTest.FOLDER.resolve("ten-field-preamble.toml"));
    int at = indexWith(lines, good);
    int named = indexWith(lines, lineWith);
    lines.set(at, lines.get(at).replace(good, bad));
    Files.write(folder.resolve("mine.toml"), lines);
    String message =
        String.valueOf(
            assertThrows(SettingsException.class, () -> InstrumentProfiles.load(folder))
                .getMessage());
    String expected = "mine.toml line " + (named + 1) + ": '" + sentence;
    assertTrue(message.startsWith(expected), () -> message + "\ndoes not begin as\n" + expected);
  }

  private static int indexWith(List<String> lines, String text) {
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).contains(text) && !lines.get(i).startsWith("#")) {
        return i;
      }
    }
    throw new AssertionError("the profile has no line with " + text);
  }
}
