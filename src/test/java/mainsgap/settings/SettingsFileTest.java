package mainsgap.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SettingsFileTest {
  private static final String BENCH =
      """
      # a bench
      name = "bench one"

      [probe]
      factor = 100
      rated = true
      words = ["a", "b"]

      [[channels]]
      number = 1
      [[channels]]
      number = 2
      """;

  private Path parent;
  private Path folder;

  private enum Coupling {
    DIRECT,
    HIGH_PASS
  }

  @BeforeEach
  void makeFolder(@TempDir Path temporary) throws IOException {
    parent = temporary;
    folder = Files.createDirectory(parent.resolve("settings"));
    write("bench.toml", BENCH);
    Files.writeString(parent.resolve("outside.toml"), BENCH);
  }

  @Test
  void valuesOfEachKindAreRead() {
    SettingsTable root = root();
    SettingsTable probe = root.table("probe", "factor", "rated", "words");
    assertEquals("bench one", root.text("name"));
    assertEquals(100, probe.number("factor", 1, 1000));
    assertEquals(100, probe.whole("factor", 1, 1000));
    assertTrue(probe.flag("rated", false));
    assertEquals(List.of("a", "b"), probe.texts("words"));
    assertEquals(2, root.tables("channels", "number").get(1).whole("number", 1, 4));
    assertEquals(List.of("bench.toml"), SettingsFile.names(folder));
  }

  static Stream<Arguments> complaints() {
    return Stream.of(
        complaint(
            root -> root.table("probe", "faktor", "rated", "words"),
            "bench.toml line 5: 'probe.factor' is not a key that is known here; allowed: faktor,"
                + " rated, words"),
        complaint(
            root -> root.tables("channels", "channel"),
            "bench.toml line 10: 'channels[1].number' is not a key that is known here; allowed:"
                + " channel"),
        complaint(
            root -> probe(root).number("factor", 0.1, 50),
            "bench.toml line 5: 'probe.factor' is 100; allowed: 0.1 to 50"),
        complaint(
            root -> probe(root).text("factor"),
            "bench.toml line 5: 'probe.factor' is the number 100, expected a text in quotes"),
        complaint(
            root -> probe(root).whole("rated", 0, 1),
            "bench.toml line 6: 'probe.rated' is the flag true, expected a whole number"),
        complaint(
            root -> root.number("name", 0, 1),
            "bench.toml line 2: 'name' is the text \"bench one\", expected a number"),
        complaint(
            root -> root.choice("name", Coupling.class),
            "bench.toml line 2: 'name' is 'bench one'; allowed: direct, high-pass"),
        complaint(
            root -> probe(root).text("serial"),
            "bench.toml line 4: 'probe.serial' is missing: add it to this table"));
  }

  @ParameterizedTest
  @MethodSource("complaints")
  void everyComplaintHasFileLineAndKey(Consumer<SettingsTable> reading, String sentence) {
    SettingsTable root = root();
    assertEquals(
        sentence, assertThrows(SettingsException.class, () -> reading.accept(root)).getMessage());
  }

  @Test
  void brokenTomlIsRefusedWithItsLine() throws IOException {
    write("broken.toml", "name = \"a\"\n\n[probe\nfactor = 1\n");
    assertTrue(refusal("broken.toml").startsWith("broken.toml line 3: not TOML: "));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../outside.toml",
        "sub/../../outside.toml",
        "..\\outside.toml",
        "sub/../bench.toml"
      })
  void noNameLeadsUpwards(String name) {
    assertTrue(refusal(name).contains("leads outside the folder"), refusal(name));
  }

  @Test
  void noAbsoluteNameLeadsOutside() {
    String name = parent.resolve("outside.toml").toAbsolutePath().toString();
    assertTrue(refusal(name).contains("leads outside the folder"));
  }

  @Test
  void noLinkLeadsOutside() throws IOException {
    Files.createSymbolicLink(folder.resolve("link.toml"), parent.resolve("outside.toml"));
    assertTrue(refusal("link.toml").contains("leads outside the folder"));
  }

  @Test
  void aFileThatIsNotThereIsNamed() {
    assertTrue(refusal("none.toml").startsWith("no settings file 'none.toml' in "));
  }

  @Test
  void aFolderIsNoSettingsFile() throws IOException {
    Files.createDirectory(folder.resolve("folder.toml"));
    assertEquals("folder.toml is not a file: name a TOML file", refusal("folder.toml"));
  }

  @Test
  void aFileThatIsTooLargeIsNotRead() throws IOException {
    write("large.toml", "#".repeat(SettingsFile.LARGEST_BYTES + 1));
    assertEquals(
        "large.toml is larger than 262144 bytes: this is not a settings file",
        refusal("large.toml"));
  }

  @Test
  void bytesThatAreNoTextAreRefused() throws IOException {
    Files.write(
        folder.resolve("binary.toml"), "name = \"\u00e9\"".getBytes(StandardCharsets.ISO_8859_1));
    assertEquals("binary.toml is not text in UTF-8: save it as such", refusal("binary.toml"));
  }

  @Test
  void aTextIsOnePlainLine() throws IOException {
    write("ctrl.toml", "name = \"a\\u001b[2Jb\"");
    write("long.toml", "name = \"" + "x".repeat(1001) + "\"");
    assertEquals(
        "ctrl.toml line 1: 'name' holds a line end or another control character: write one plain"
            + " line",
        refusalOfName("ctrl.toml"));
    assertEquals(
        "long.toml line 1: 'name' has 1001 characters; allowed: at most 1000",
        refusalOfName("long.toml"));
  }

  @Test
  void deepNestingIsRefused() throws IOException {
    write("deep.toml", "a = " + "[".repeat(100_000) + "]".repeat(100_000));
    assertTrue(refusal("deep.toml").startsWith("deep.toml "), refusal("deep.toml"));
  }

  @Test
  void aFileOfTheUserIsReadWhereverItIs() {
    SettingsFile file = SettingsFile.readFile(parent.resolve("outside.toml"));
    assertEquals("bench one", file.root("name", "probe", "channels").text("name"));
  }

  private static Arguments complaint(Consumer<SettingsTable> reading, String sentence) {
    return Arguments.of(reading, sentence);
  }

  private static SettingsTable probe(SettingsTable root) {
    return root.table("probe", "factor", "rated", "words", "serial");
  }

  private SettingsTable root() {
    return SettingsFile.read(folder, "bench.toml").root("name", "probe", "channels");
  }

  private String refusalOfName(String file) {
    SettingsTable root = SettingsFile.read(folder, file).root("name");
    return String.valueOf(
        assertThrows(SettingsException.class, () -> root.text("name")).getMessage());
  }

  private String refusal(String name) {
    return String.valueOf(
        assertThrows(SettingsException.class, () -> SettingsFile.read(folder, name)).getMessage());
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }
}
