package mainsgap.session;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.CodeFormat;
import mainsgap.signal.Event;
import mainsgap.signal.Scale;
import mainsgap.signal.TimeAxis;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/** The content of one entry, read from its JSON text. {@link EntryWriting} is the way there. */
final class EntryReading {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final String place;
  private final Entry entry;
  private final JsonNode content;

  /**
   * Parses the entry.
   *
   * @param place the file and the entry in words, for complaints
   */
  EntryReading(String place, Entry entry) {
    this.place = place;
    this.entry = entry;
    try {
      content = JSON.readTree(entry.content());
    } catch (JsonProcessingException e) {
      throw new SessionException(place + " is no JSON object", e);
    }
  }

  SessionHeader header() {
    return new SessionHeader(
        Instant.parse(text(content, "startedAt")),
        text(content, "programVersion"),
        field(content, "simulated").asBoolean(),
        text(content, "unit"),
        content.path("claim").isObject() ? claim(content.get("claim")) : null,
        task(field(content, "task")),
        text(content, "instrument"),
        words(field(content, "rig")),
        words(field(content, "conditions")));
  }

  LoggedTrial trial() {
    return new LoggedTrial(
        whole(content, "trial"),
        Instant.parse(text(content, "at")),
        figures(field(content, "figures")),
        content.path("budget").isObject() ? budget(content.get("budget")) : null,
        text(content, "sentence"),
        content.path("verdictReason").textValue(),
        null,
        List.of(),
        null,
        entry.seal());
  }

  StoredCapture capture() {
    JsonNode time = field(content, "time");
    TimeAxis axis =
        new TimeAxis(
            number(time, "firstSampleSeconds"),
            number(time, "intervalSeconds"),
            whole(time, "samples"),
            numberOr(time, "timeBasePpm", Double.POSITIVE_INFINITY));
    List<StoredChannel> channels = new ArrayList<>();
    for (JsonNode channel : field(content, "channels")) {
      channels.add(channel(channel));
    }
    return new StoredCapture(entry.number(), place, axis, channels);
  }

  Remark remark() {
    return new Remark(
        Instant.parse(text(content, "at")),
        Remark.Kind.valueOf(text(content, "kind")),
        content.has("trial") ? (Integer) whole(content, "trial") : null,
        text(content, "text"));
  }

  int setAsideTrial() {
    return whole(content, "trial");
  }

  String setAsideReason() {
    return text(content, "reason");
  }

  SessionException wrong(String how) {
    return new SessionException(place + " does not fit: " + how);
  }

  private DeclaredClaim claim(JsonNode claim) {
    return new DeclaredClaim(
        text(claim, "asPrinted"),
        number(claim, "millis"),
        field(claim, "strictlyBelow").asBoolean(),
        DeclaredClaim.Kind.valueOf(text(claim, "kind")),
        text(claim, "definition"),
        text(claim, "source"),
        text(claim, "date"));
  }

  private MeasuringTask task(JsonNode task) {
    return new MeasuringTask(
        Event.valueOf(text(task, "event")),
        number(task, "nominalVolts"),
        number(task, "nominalFrequencyHertz"));
  }

  private StoredChannel channel(JsonNode channel) {
    return new StoredChannel(
        ChannelRole.valueOf(text(channel, "channel")),
        CodeFormat.valueOf(text(channel, "format")),
        new Scale(
            number(channel, "referenceCode"),
            number(channel, "voltsPerCode"),
            number(channel, "originVolts"),
            numberOr(channel, "lowestCode", Double.NEGATIVE_INFINITY),
            numberOr(channel, "highestCode", Double.POSITIVE_INFINITY)),
        whole(channel, "bytes"),
        text(channel, "sha256"));
  }

  private UncertaintyBudget budget(JsonNode budget) {
    List<UncertaintyBudget.Component> components = new ArrayList<>();
    for (JsonNode component : field(budget, "components")) {
      components.add(
          new UncertaintyBudget.Component(
              text(component, "name"),
              numberOr(component, "standardMillis", Double.NaN),
              field(component, "common").asBoolean()));
    }
    return new UncertaintyBudget(components, numberOr(budget, "coverageFactor", Double.NaN));
  }

  private static Map<String, @Nullable Object> figures(JsonNode figures) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    figures.properties().forEach(figure -> values.put(figure.getKey(), value(figure.getValue())));
    return values;
  }

  private static @Nullable Object value(JsonNode node) {
    return switch (node.getNodeType()) {
      case BOOLEAN -> node.booleanValue();
      case NUMBER -> node.isInt() ? (Object) node.intValue() : (Object) node.doubleValue();
      case STRING -> node.textValue();
      case NULL, MISSING, ARRAY, BINARY, OBJECT, POJO -> null;
    };
  }

  private static Map<String, String> words(JsonNode words) {
    Map<String, String> values = new LinkedHashMap<>();
    words.properties().forEach(word -> values.put(word.getKey(), word.getValue().asText()));
    return values;
  }

  private JsonNode field(JsonNode parent, String name) {
    JsonNode found = parent.get(name);
    if (found == null) {
      throw wrong("the field " + name + " is missing");
    }
    return found;
  }

  private String text(JsonNode parent, String name) {
    return field(parent, name).asText();
  }

  private double number(JsonNode parent, String name) {
    JsonNode found = field(parent, name);
    if (!found.isNumber()) {
      throw wrong("the field " + name + " is no number");
    }
    return found.doubleValue();
  }

  private double numberOr(JsonNode parent, String name, double unknown) {
    return field(parent, name).isNull() ? unknown : number(parent, name);
  }

  private int whole(JsonNode parent, String name) {
    double found = number(parent, name);
    if (found != Math.rint(found) || found < 0 || found > Integer.MAX_VALUE) {
      throw wrong("the field " + name + " is no whole number from 0 up");
    }
    return (int) found;
  }
}
