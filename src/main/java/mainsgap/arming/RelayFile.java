package mainsgap.arming;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import mainsgap.settings.SettingsFile;
import mainsgap.settings.SettingsTable;
import org.jspecify.annotations.Nullable;

/**
 * What a relay understands, as its owner wrote it down. {@code src/docs/serial-relay.md} tells the
 * keys.
 */
public final class RelayFile {
  private static final int LONGEST_MESSAGE = 64;
  private static final double LONGEST_WAIT_SECONDS = 10;
  private static final byte[] NOTHING = {};
  private static final String[] EXCHANGE_KEYS = {"text", "bytes", "reply-text", "reply-bytes"};
  private static final String[] STATE_KEYS = {
    "text", "bytes", "on-text", "on-bytes", "off-text", "off-bytes"
  };

  private final String name;
  private final Duration replyWait;
  private final RelayExchange on;
  private final RelayExchange off;
  private final @Nullable State state;
  private final @Nullable RelayExchange offAtAngle;

  /** What the relay's coil moves. */
  private enum Contact {
    /** A rated, enclosed two-pole contactor: opens when it can. */
    CONTACTOR,
    /** An electronic switch that can turn off at any instant, itself behind a two-pole isolator. */
    TURN_OFF_ELECTRONIC
  }

  private enum LineEnd {
    NONE(""),
    LF("\n"),
    CR("\r"),
    CR_LF("\r\n");

    private final String characters;

    LineEnd(String characters) {
      this.characters = characters;
    }
  }

  /**
   * How the relay tells where it stands: one question, two answers.
   *
   * @param whenOn the question and the answer of a relay that is on
   * @param whenOff the same question and the answer of one that is off
   */
  record State(RelayExchange whenOn, RelayExchange whenOff) {
    byte[] question() {
      return whenOn.message();
    }
  }

  private RelayFile(SettingsTable root) {
    this.name = root.text("name");
    this.replyWait =
        Sentences.seconds(
            root.optionalNumber("reply-seconds", 0.01, LONGEST_WAIT_SECONDS).orElse(1));
    boolean electronic = root.choice("contact", Contact.class) == Contact.TURN_OFF_ELECTRONIC;
    String end = root.has("line-end") ? root.choice("line-end", LineEnd.class).characters : "";
    this.on = exchange(root.table("on", EXCHANGE_KEYS), end);
    this.off = exchange(root.table("off", EXCHANGE_KEYS), end);
    this.state =
        root.optionalTable("state", STATE_KEYS).map(table -> state(table, end)).orElse(null);
    this.offAtAngle =
        root.optionalTable("off-at-angle", EXCHANGE_KEYS)
            .map(table -> atAngle(root, table, end, electronic))
            .orElse(null);
  }

  /**
   * Reads the file {@code name} inside {@code folder}.
   *
   * @throws mainsgap.settings.SettingsException with file, line and key where it cannot be used
   */
  public static RelayFile read(Path folder, String name) {
    return new RelayFile(
        SettingsFile.read(folder, name)
            .root(
                "name",
                "contact",
                "reply-seconds",
                "line-end",
                "on",
                "off",
                "state",
                "off-at-angle"));
  }

  String name() {
    return name;
  }

  /** How long the relay may take to answer. */
  Duration replyWait() {
    return replyWait;
  }

  RelayExchange on() {
    return on;
  }

  RelayExchange off() {
    return off;
  }

  /** How it is asked; null where it does not tell. */
  @Nullable State state() {
    return state;
  }

  /** How it opens at an angle; null where the contact cannot. */
  @Nullable RelayExchange offAtAngle() {
    return offAtAngle;
  }

  private static RelayExchange exchange(SettingsTable table, String end) {
    boolean answers = table.has("reply-text") || table.has("reply-bytes");
    return new RelayExchange(
        message(table, "text", "bytes", end),
        answers ? message(table, "reply-text", "reply-bytes", end) : NOTHING);
  }

  private static RelayExchange atAngle(
      SettingsTable root, SettingsTable table, String end, boolean electronic) {
    if (!electronic) {
      throw root.complaint(
          "off-at-angle",
          "belongs to a turn-off electronic switch: a contactor opens when it can, and the angle is"
              + " measured; take this table out, or write contact = \"turn-off-electronic\"");
    }
    if (!table.has("text") || !table.text("text").contains(ScpiOutputCommands.ANGLE)) {
      throw table.complaint(
          "text", "has no " + ScpiOutputCommands.ANGLE + " where the degrees belong: add it");
    }
    return exchange(table, end);
  }

  private static State state(SettingsTable table, String end) {
    byte[] question = message(table, "text", "bytes", end);
    byte[] on = message(table, "on-text", "on-bytes", end);
    byte[] off = message(table, "off-text", "off-bytes", end);
    int shorter = Math.min(on.length, off.length);
    if (Arrays.equals(on, 0, shorter, off, 0, shorter)) {
      throw table.complaint(
          table.has("off-text") ? "off-text" : "off-bytes",
          "cannot be told from the answer of a relay that is on: one begins like the other");
    }
    return new State(new RelayExchange(question, on), new RelayExchange(question, off));
  }

  /** The bytes under one of the two keys. */
  private static byte[] message(SettingsTable table, String text, String bytes, String end) {
    if (table.has(text) && table.has(bytes)) {
      throw table.complaint(bytes, "stands beside '" + text + "': write one of the two");
    }
    if (table.has(bytes)) {
      List<Integer> numbers = table.wholes(bytes, 0, 255);
      if (numbers.isEmpty() || numbers.size() > LONGEST_MESSAGE) {
        throw table.complaint(
            bytes, "has " + numbers.size() + " bytes; allowed: 1 to " + LONGEST_MESSAGE);
      }
      byte[] message = new byte[numbers.size()];
      for (int i = 0; i < message.length; i++) {
        message[i] = numbers.get(i).byteValue();
      }
      return message;
    }
    String line = table.text(text) + end;
    if (line.length() > LONGEST_MESSAGE
        || !StandardCharsets.US_ASCII.newEncoder().canEncode(line)) {
      throw table.complaint(
          text, "is not a text of at most " + LONGEST_MESSAGE + " ASCII characters");
    }
    return line.getBytes(StandardCharsets.US_ASCII);
  }
}
