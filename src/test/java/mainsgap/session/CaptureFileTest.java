package mainsgap.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureFileTest {
  private static final int SAMPLES = 600;
  private static final double INTERVAL = 1e-4;
  private static final double START = -0.01;

  private final Path file;

  CaptureFileTest(@TempDir Path folder) {
    file = folder.resolve("capture.csv");
  }

  private static double volts(int i) {
    return Math.round(3253 * Math.sin(2 * Math.PI * 50 * (START + i * INTERVAL))) / 10.0;
  }

  /** Rows of {@code format}, which gets the time in seconds, the volts and the index. */
  private static String rows(String format, double timeFactor, double voltsFactor) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < SAMPLES; i++) {
      double seconds = START + i * INTERVAL;
      text.append(
          String.format(
              Locale.ROOT, format + "%n", seconds * timeFactor, volts(i) * voltsFactor, i));
    }
    return text.toString();
  }

  private static String withDecimalComma(String rows) {
    return rows.replace('.', ',');
  }

  private Capture read(String text, CaptureFileOptions options) throws IOException {
    return read(text, StandardCharsets.UTF_8, options);
  }

  private Capture read(String text, Charset charset, CaptureFileOptions options)
      throws IOException {
    Files.write(file, text.getBytes(charset));
    return CaptureFile.read(file, options);
  }

  private static CaptureFileOptions interval(double seconds) {
    return new CaptureFileOptions(null, Map.of(), seconds, null, 1);
  }

  static Stream<Arguments> tables() {
    String plain = rows("%.4f,%.1f", 1, 1);
    return Stream.of(
        Arguments.of("names and units", "Time,CH1\ns,V\n" + plain),
        Arguments.of("no header", plain),
        Arguments.of("names that are units", "Second,Volt\n" + plain),
        Arguments.of("carriage returns", "Time,CH1\r" + plain.replace("\n", "\r")),
        Arguments.of("both line ends", "Time,CH1\r\n" + plain.replace("\n", "\r\n")),
        Arguments.of(
            "blank lines and a last delimiter", "\nTime,CH1\n\n" + plain.replace("\n", ",\n\n")),
        Arguments.of("byte order mark", "\uFEFFTime,CH1\n" + plain),
        Arguments.of(
            "decimal comma, milliseconds and millivolts",
            "Zeit;Kanal 1\nms;mV\n" + withDecimalComma(rows("%.1f;%.0f", 1e3, 1e3))),
        Arguments.of(
            "microseconds in brackets, tabs", "t [µs]\tU [kV]\n" + rows("%.0f\t%.4f", 1e6, 1e-3)),
        Arguments.of(
            "units in parentheses, spaces", "Time (s)  CH1 (V)\n" + rows("%10.4f %8.1f", 1, 1)),
        Arguments.of("quantity over unit", "t/ms;U/V\n" + rows("%.1f;%.1f", 1e3, 1)),
        Arguments.of(
            "quoted decimal commas",
            "\"Time\",\"CH1\"\n"
                + withDecimalComma(rows("\"%.4f\"~\"%.1f\"", 1, 1)).replace('~', ',')),
        Arguments.of(
            "a preamble",
            "Instrument,bench scope,serial 12\nRecord length,600\nProbe,100\n\nTime,CH1\n" + plain),
        Arguments.of(
            "a preamble of other shape", "# saved; by hand\n# 1, 2, 3\nTime,CH1\n" + plain),
        Arguments.of("exponents", "time,ch1\n" + rows("%.6e,%+.4E", 1, 1)),
        Arguments.of("a current first", "Time (s),CH1 (A),CH2 (V)\n" + rows("%.4f,1.5,%.1f", 1, 1)),
        Arguments.of("the time last", "CH1 (V),Time (s)\n" + rows("%2$.1f,%1$.4f", 1, 1)),
        Arguments.of(
            "a preamble in columns at the left",
            ("Points,600," + plain.replaceFirst("\n", "\nRate,high,"))
                .replaceAll("(?m)^(?=-?0)", ",,")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tables")
  void timesAndVoltagesAreFound(String name, String text) throws IOException {
    Capture capture = read(text, CaptureFileOptions.NONE);
    assertEquals(SAMPLES, capture.time().length());
    assertEquals(START, capture.time().firstSampleSeconds(), 1e-9);
    assertEquals(INTERVAL, capture.time().intervalSeconds(), 1e-10);
    assertEquals(CodeFormat.REAL_64_LSB_FIRST, capture.output().format());
    for (int i = 0; i < SAMPLES; i++) {
      assertEquals(volts(i), capture.output().voltsAt(i), 1e-9);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16", "UTF-16LE", "UTF-16BE"})
  void textInUtf16IsRead(String charset) throws IOException {
    String mark = charset.equals("UTF-16") ? "" : "\uFEFF"; // that charset writes its own mark
    Capture capture =
        read(
            mark + "Zeit (µs),Spannung (V)\n" + rows("%.0f,%.1f", 1e6, 1),
            Charset.forName(charset),
            CaptureFileOptions.NONE);
    assertEquals(SAMPLES, capture.time().length());
    assertEquals(INTERVAL, capture.time().intervalSeconds(), 1e-10);
  }

  @Test
  void timesSince1970KeepTheirDigits() throws IOException {
    StringBuilder text = new StringBuilder("Time (s),CH1 (V)\n");
    for (int i = 0; i < 20_000; i++) {
      text.append(
          String.format(Locale.ROOT, "%.6f,%.1f%n", 1.7e9 + i * INTERVAL, volts(i % SAMPLES)));
    }
    Capture capture = read(text.toString(), CaptureFileOptions.NONE);
    assertEquals(1.7e9, capture.time().firstSampleSeconds(), 1e-6);
    assertEquals(INTERVAL, capture.time().intervalSeconds(), 1e-5 * INTERVAL);
  }

  static Stream<Arguments> tablesWithoutTimes() {
    String column = rows("%2$.1f", 1, 1);
    String counted = rows("%3$d,%2$.1f", 1, 1);
    return Stream.of(
        Arguments.of("given, one column", column, interval(INTERVAL)),
        Arguments.of("given, decimal comma", withDecimalComma(column), interval(INTERVAL)),
        Arguments.of("given, over a time column", rows("%.3f,%.1f", 1, 1), interval(INTERVAL)),
        Arguments.of("in a preamble", "Sample interval,1e-4\n" + column, CaptureFileOptions.NONE),
        Arguments.of("with a unit", "Sampling period (us):100\n" + column, CaptureFileOptions.NONE),
        Arguments.of("as a rate", "Sample Rate,10,kHz\n" + column, CaptureFileOptions.NONE),
        Arguments.of(
            "as a rate in words", "Sample rate: 10 kHz\n" + column, CaptureFileOptions.NONE),
        Arguments.of(
            "below its name",
            "X,CH1,Start,Increment\nSequence,Volt,-0.01,1e-4\n" + counted.replace("\n", ",,\n"),
            CaptureFileOptions.NONE));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tablesWithoutTimes")
  void anIntervalStandsForTheTimes(String name, String text, CaptureFileOptions options)
      throws IOException {
    Capture capture = read(text, options);
    assertEquals(SAMPLES, capture.time().length());
    assertEquals(INTERVAL, capture.time().intervalSeconds(), 1e-15);
    assertEquals(volts(123), capture.output().voltsAt(123), 1e-9);
  }

  @Test
  void aMicroSignInLatinOneIsRead() throws IOException {
    Capture capture =
        read(
            "Zeit (µs);U (V)\n" + rows("%.0f;%.1f", 1e6, 1),
            StandardCharsets.ISO_8859_1,
            CaptureFileOptions.NONE);
    assertEquals(INTERVAL, capture.time().intervalSeconds(), 1e-10);
  }

  @Test
  void optionsOverrideWhatIsFound() throws IOException {
    String text = "Time,CH1,CH2,Other time\n" + rows("%.4f,7,%.1f,%3$d", 1, 1);
    Capture byName =
        read(
            text,
            new CaptureFileOptions(
                "other time",
                Map.of(ChannelRole.OUTPUT, "ch2", ChannelRole.MAINS, "CH1"),
                null,
                null,
                100));
    assertEquals(1, byName.time().intervalSeconds(), 1e-9);
    assertEquals(100 * volts(50), byName.output().voltsAt(50), 1e-9);
    assertEquals(700, byName.waveform(ChannelRole.MAINS).orElseThrow().voltsAt(50), 1e-9);
    Capture byNumber =
        read(text, new CaptureFileOptions("1", Map.of(ChannelRole.OUTPUT, "3"), null, null, -1));
    assertEquals(INTERVAL, byNumber.time().intervalSeconds(), 1e-10);
    assertEquals(-volts(50), byNumber.output().voltsAt(50), 1e-9);
  }

  @Test
  void timesRoundedInPrintAreAnEvenAxis() throws IOException {
    StringBuilder text = new StringBuilder("Time,CH1\n");
    for (int i = 0; i < 5_000; i++) {
      text.append(String.format(Locale.ROOT, "%.6f,%d%n", i * 4e-7, i % 7));
    }
    Capture capture = read(text.toString(), CaptureFileOptions.NONE);
    assertEquals(4e-7, capture.time().intervalSeconds(), 1e-10);
  }

  static Stream<Arguments> unreadable() {
    String plain = "Time,CH1\n" + rows("%.4f,%.1f", 1, 1);
    CaptureFileOptions none = CaptureFileOptions.NONE;
    return Stream.of(
        Arguments.of("empty", "", none, " is empty; export the capture again"),
        Arguments.of("blank", "\n\n", none, " is empty; export the capture again, with samples"),
        Arguments.of(
            "binary", "PK\u0003\u0000\u0001", none, ", line 1 holds bytes that are no text"),
        Arguments.of("prose", "it\nwas\na dark, stormy night\n", none, "it begins with 'it'"),
        Arguments.of(
            "words in the middle",
            plain.replace("0.0100,0.0\n", "the pen slipped\n"),
            none,
            ", line 202 has 'the pen slipped' for Time, where a number should stand"),
        Arguments.of(
            "a word for a voltage",
            plain.replace("0.0150,-325.3", "0.0150,overload"),
            none,
            ", line 252 has 'overload' for CH1, where a number should stand"),
        Arguments.of(
            "not a number",
            plain.replace("0.0150,-325.3", "0.0150,NaN"),
            none,
            "line 252 has 'NaN'"),
        Arguments.of(
            "infinite",
            plain.replace("0.0150,-325.3", "0.0150,1e999"),
            none,
            "line 252 has '1e999'"),
        Arguments.of(
            "a row cut short",
            plain.replace("0.0150,-325.3", "0.0150"),
            none,
            ", line 252 has no value for CH1: it reads '0.0150'"),
        Arguments.of(
            "a row too long",
            plain.replace("0.0150,-325.3", "0.0150,-325,3"),
            none,
            ", line 252 has 3 fields, the rows before it 2"),
        Arguments.of(
            "the times as the voltage",
            plain,
            new CaptureFileOptions("1", Map.of(ChannelRole.OUTPUT, "1"), null, null, 1),
            ": a voltage and the times cannot both come from 'Time'; name two columns"),
        Arguments.of(
            "the mains from the times",
            plain,
            new CaptureFileOptions(null, Map.of(ChannelRole.MAINS, "1"), null, null, 1),
            ": a voltage and the times cannot both come from 'Time'; name two columns"),
        Arguments.of(
            "the mains from the voltage",
            plain,
            new CaptureFileOptions(
                null, Map.of(ChannelRole.OUTPUT, "2", ChannelRole.MAINS, "2"), null, null, 1),
            ": the voltage and the mains cannot both come from 'CH1'; name two columns"),
        Arguments.of(
            "a sample left out",
            plain.replace("0.0150,-325.3\n", ""),
            none,
            "is off an even time axis"),
        Arguments.of(
            "time goes back",
            plain.replace("\n0.0150,", "\n0.0140,"),
            none,
            ", line 252 goes back in time, from 0.0149 s to 0.014 s"),
        Arguments.of(
            "time stands still",
            rows("1.0,%2$.1f", 1, 1),
            new CaptureFileOptions("1", Map.of(ChannelRole.OUTPUT, "2"), null, null, 1),
            "has the time 1.0 s on all lines"),
        Arguments.of(
            "times printed too coarsely",
            "Time,CH1\n" + rows("%.2f,%.1f", 1, 1),
            none,
            "prints its times too coarsely"),
        Arguments.of(
            "a sample left out, whatever the interval given",
            "Time (s),CH1\n" + rows("%.4f,%.1f", 1, 1).replace("0.0150,-325.3\n", ""),
            interval(INTERVAL),
            ", line 252 is 0.000200000 s after the line before it"),
        Arguments.of(
            "an interval that the times contradict",
            "Time (s),CH1\n" + rows("%.4f,%.1f", 1, 1),
            interval(2 * INTERVAL),
            "the given interval of 0.000200000 s leads to 0.000600000 s: leave out --interval"),
        Arguments.of("few samples", "0.1,2\n0.2,3\n0.3,4\n0.4,5\n", none, "has 4 samples"),
        Arguments.of("one column", rows("%2$.1f", 1, 1), none, "has no column of times"),
        Arguments.of(
            "no such column",
            plain,
            new CaptureFileOptions(null, Map.of(ChannelRole.OUTPUT, "CH9"), null, null, 1),
            "has no column 'CH9'; it has 'Time', 'CH1'"),
        Arguments.of(
            "no voltage",
            "Time (s),I (A)\n" + rows("%.4f,%.1f", 1, 1),
            none,
            "has no column of volt"),
        Arguments.of("an endless line", "1,".repeat(40_000), none, "is longer than 65536"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("unreadable")
  void whatCannotBeReadIsToldInASentence(
      String name, String text, CaptureFileOptions options, String sentence) {
    CaptureFileException complaint =
        assertThrows(CaptureFileException.class, () -> read(text, options));
    String message = String.valueOf(complaint.getMessage());
    assertTrue(message.startsWith(file.toString()), message);
    assertTrue(message.contains(sentence), message);
  }

  @Test
  void missingSamplesAreNoReasonToGiveAnInterval() {
    CaptureFileException complaint =
        assertThrows(
            CaptureFileException.class,
            () ->
                read(
                    "Time,CH1\n" + rows("%.4f,%.1f", 1, 1).replace("0.0150,-325.3\n", ""),
                    CaptureFileOptions.NONE));
    assertTrue(String.valueOf(complaint.getMessage()).endsWith("; export every sample"));
  }

  @Test
  void intervalOverridesTimesWhoseUnitTheFileDoesNotTell() throws IOException {
    Capture capture = read("time,CH1\n" + rows("%.4f,%.1f", 1e3, 1), interval(INTERVAL));
    assertEquals(INTERVAL, capture.time().intervalSeconds(), 1e-15);
  }

  @Test
  void accuracyOfTheTimeBaseIsAssumedUnlessItIsStated() throws IOException {
    String text = "Time,CH1\n" + rows("%.4f,%.1f", 1, 1);
    Capture assumed = read(text, CaptureFileOptions.NONE);
    Capture stated = read(text, new CaptureFileOptions(null, Map.of(), null, 25.0, 1));

    assertEquals(100, assumed.time().timeBasePpm());
    assertTrue(assumed.time().timeBaseAssumed());
    assertEquals(25, stated.time().timeBasePpm());
    assertFalse(stated.time().timeBaseAssumed());
  }

  @Test
  void aMissingFileAndAFolderAreTold() {
    assertEquals(
        "there is no capture file " + file + "; check the path",
        assertThrows(
                CaptureFileException.class, () -> CaptureFile.read(file, CaptureFileOptions.NONE))
            .getMessage());
    Path folder = file.resolveSibling(".");
    assertEquals(
        folder + " is a folder; name a capture file in it",
        assertThrows(
                CaptureFileException.class, () -> CaptureFile.read(folder, CaptureFileOptions.NONE))
            .getMessage());
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void whatIsNoFileIsNotWaitedFor() {
    Path device = Path.of("/dev/null");
    assertEquals(
        "/dev/null is a pipe or a device, no file; save the capture to a file and name that",
        assertThrows(
                CaptureFileException.class, () -> CaptureFile.read(device, CaptureFileOptions.NONE))
            .getMessage());
  }

  @Test
  void aFileOfTooManySamplesIsRefusedAtTheLine() throws IOException {
    Files.writeString(file, rows("%.4f,%.1f", 1, 1));
    CaptureFileException complaint =
        assertThrows(
            CaptureFileException.class, () -> CaptureFile.read(file, CaptureFileOptions.NONE, 100));
    assertEquals(
        file + ", line 101 goes beyond 100 samples; export a part of the record",
        complaint.getMessage());
  }

  @Test
  void everyRoleHasItsColumnAndTheProbeFactorIsThatOfTheVoltagesAlone() throws IOException {
    StringBuilder text = new StringBuilder("t (s),out (V),leg (V),i (A),contact (V)\n");
    for (int i = 0; i < 40; i++) {
      text.append(i * 1e-4).append(",1,2,3,").append(i < 20 ? 5 : 0).append('\n');
    }
    Capture capture =
        read(
            text.toString(),
            new CaptureFileOptions(
                null,
                Map.of(
                    ChannelRole.SECOND_LEG, "leg",
                    ChannelRole.LOAD_CURRENT, "i",
                    ChannelRole.MARKER, "contact"),
                null,
                null,
                100));
    assertEquals(100, capture.output().volts()[0], 1e-9);
    assertEquals(200, capture.waveform(ChannelRole.SECOND_LEG).orElseThrow().volts()[0], 1e-9);
    assertEquals(3, capture.waveform(ChannelRole.LOAD_CURRENT).orElseThrow().volts()[0], 1e-9);
    assertEquals(5, capture.waveform(ChannelRole.MARKER).orElseThrow().volts()[0], 1e-9);
  }
}
