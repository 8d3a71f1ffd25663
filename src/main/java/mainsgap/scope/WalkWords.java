package mainsgap.scope;

import static java.util.Map.entry;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What the keys of a profile are for, and what replies say, in words. */
final class WalkWords {
  private static final Map<String, String> OF_PROGRAM =
      Map.of(
          "*IDN?", "asks who the instrument is (IEEE 488.2)",
          "*CLS", "forgets old errors and events (IEEE 488.2)",
          ":SYST:ERR?", "asks whether any of this was refused (SCPI-1999)");

  private static final Map<String, String> OF_KEYS =
      Map.ofEntries(
          entry("commands.connect", "brings the instrument into a known state"),
          entry("commands.channel-on", "switches the channel on: coupling, probe factor, range"),
          entry(
              "commands.channel-off",
              "switches off what is not used, so that the memory serves the other channels"),
          entry("commands.record", "sets the time base and the length of the record"),
          entry("triggers.forced", "prepares a record that does not wait for the signal"),
          entry("triggers", "sets the trigger"),
          entry("commands.arm", "starts one acquisition"),
          entry("commands.force", "forces the trigger that the instrument waits for"),
          entry("commands.disarm", "stops, so that nothing is armed any more"),
          entry("read-back.range", "asks what range the channel really has"),
          entry("read-back.samples", "asks how long the record really is"),
          entry("read-back.interval", "asks how fast the instrument really samples"),
          entry("state", "asks where the acquisition stands"),
          entry("timing.settled-query", "waits until the settings have taken effect"),
          entry("waveform.prepare", "has the instrument make the record ready to be read"),
          entry("waveform.values", "asks for a number that says what the record means"),
          entry("waveform.words", "asks for a word that says in what form the record comes"),
          entry("waveform.select", "chooses the channel and the form in which its record comes"),
          entry("waveform.before", "keeps the record as it is while its channels are read"),
          entry("waveform.window", "chooses the part of the record that comes next"),
          entry("waveform.preamble", "asks what the codes of the record mean"),
          entry("waveform.data", "fetches the samples"));

  private static final String[] TEN_FIELDS = {
    "format",
    "type",
    "points",
    "count",
    "xincrement",
    "xorigin",
    "xreference",
    "yincrement",
    "yorigin",
    "yreference"
  };

  private final InstrumentProfile profile;

  WalkWords(InstrumentProfile profile) {
    this.profile = profile;
  }

  /** What the message is for: by the nearest key above it that is known here. */
  static String means(Exchanged exchanged) {
    if (exchanged.key().isEmpty()) {
      return OF_PROGRAM.getOrDefault(exchanged.sent(), "");
    }
    String key = exchanged.key();
    while (!OF_KEYS.containsKey(key) && key.indexOf('.') > 0) {
      key = key.substring(0, key.lastIndexOf('.'));
    }
    return OF_KEYS.getOrDefault(key, "");
  }

  /** What the reply says. */
  String replyMeans(Exchanged exchanged) {
    String key = exchanged.key();
    if (key.startsWith("read-back.")) {
      return readBack(key).map(asked -> asked.gives().spelt()).orElse("");
    }
    if (key.equals("waveform.preamble")) {
      return tenFields(exchanged.reply().split(",", -1));
    }
    return "";
  }

  /** What the state says. */
  static String state(AcquisitionState state) {
    return state.name().toLowerCase(Locale.ROOT)
        + switch (state) {
          case IDLE -> ": nothing runs yet";
          case FILLING -> ": the event cannot be seen yet";
          case WATCHING -> ": the event may come now";
          case RECORDING -> ": the rest of the record is being taken";
          case COMPLETE -> ": the record is whole and can be read";
        };
  }

  private Optional<ReadBack> readBack(String key) {
    if (key.startsWith("read-back.range")) {
      return profile.readBacks().range();
    }
    return key.startsWith("read-back.samples")
        ? profile.readBacks().samples()
        : profile.readBacks().interval();
  }

  private static String tenFields(String[] fields) {
    if (fields.length != TEN_FIELDS.length) {
      return "";
    }
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < fields.length; i++) {
      words.append(i == 0 ? "" : ", ").append(TEN_FIELDS[i]).append(' ').append(fields[i]);
    }
    return words.toString();
  }
}
