package mainsgap.session;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Map;
import mainsgap.signal.Capture;
import mainsgap.signal.ChannelRole;
import mainsgap.signal.TimeAxis;
import mainsgap.signal.Waveform;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Figures;
import mainsgap.transfer.outcome.Judgement;
import mainsgap.transfer.outcome.MeasuringTask;
import mainsgap.transfer.outcome.UncertaintyBudget;
import org.jspecify.annotations.Nullable;

/** The content of entries as JSON text. {@link EntryReading} is the way back. */
final class EntryWriting {
  private static final ObjectMapper JSON = new ObjectMapper();

  private EntryWriting() {}

  static String header(SessionHeader header) {
    ObjectNode content = JSON.createObjectNode();
    content.put("format", SessionFile.FORMAT_VERSION);
    content.put("startedAt", header.startedAt().toString());
    content.put("programVersion", header.programVersion());
    content.put("simulated", header.simulated());
    content.put("unit", header.unit());
    content.set("claim", header.claim() == null ? null : claim(header.claim()));
    content.set("task", task(header.task()));
    content.put("instrument", header.instrument());
    content.set("rig", words(header.rig()));
    content.set("conditions", words(header.conditions()));
    return text(content);
  }

  static String trial(Trial trial, double nominalVolts) {
    ObjectNode content = JSON.createObjectNode();
    content.put("trial", trial.number());
    content.put("at", trial.at().toString());
    content.set("time", time(trial.capture().time()));
    content.set("channels", channels(trial.capture()));
    Judgement judgement = trial.judgement();
    content.set("figures", JSON.valueToTree(Figures.of(trial.outcome(), judgement, nominalVolts)));
    UncertaintyBudget budget = trial.outcome().budget();
    content.set("budget", budget == null ? null : budget(budget));
    content.put("sentence", trial.outcome().sentence());
    content.put("verdictReason", judgement == null ? null : judgement.reason());
    return text(content);
  }

  static String remark(Remark remark) {
    ObjectNode content = JSON.createObjectNode();
    content.put("at", remark.at().toString());
    content.put("kind", remark.kind().name());
    if (remark.trial() != null) {
      content.put("trial", remark.trial());
    }
    content.put("text", remark.text());
    return text(content);
  }

  static String setAside(int trialNumber, String reason, Instant at) {
    ObjectNode content = JSON.createObjectNode();
    content.put("at", at.toString());
    content.put("trial", trialNumber);
    content.put("reason", reason);
    return text(content);
  }

  private static ObjectNode claim(DeclaredClaim claim) {
    ObjectNode content = JSON.createObjectNode();
    content.put("asPrinted", claim.asPrinted());
    content.put("millis", claim.millis());
    content.put("strictlyBelow", claim.strictlyBelow());
    content.put("kind", claim.kind().name());
    content.put("definition", claim.definition());
    content.put("source", claim.source());
    content.put("date", claim.date());
    return content;
  }

  private static ObjectNode task(MeasuringTask task) {
    ObjectNode content = JSON.createObjectNode();
    content.put("event", task.event().name());
    content.put("nominalVolts", task.nominalVolts());
    content.put("nominalFrequencyHertz", task.nominalFrequencyHertz());
    return content;
  }

  private static ObjectNode time(TimeAxis time) {
    ObjectNode content = JSON.createObjectNode();
    content.put("firstSampleSeconds", time.firstSampleSeconds());
    content.put("intervalSeconds", time.intervalSeconds());
    content.put("samples", time.length());
    content.put("timeBasePpm", finite(time.timeBasePpm()));
    return content;
  }

  private static ArrayNode channels(Capture capture) {
    ArrayNode channels = JSON.createArrayNode();
    capture.waveforms().forEach((role, waveform) -> channels.add(channel(role, waveform)));
    return channels;
  }

  private static ObjectNode channel(ChannelRole role, Waveform waveform) {
    ObjectNode content = JSON.createObjectNode();
    content.put("channel", role.name());
    content.put("format", waveform.format().name());
    content.put("referenceCode", waveform.scale().referenceCode());
    content.put("voltsPerCode", waveform.scale().voltsPerCode());
    content.put("originVolts", waveform.scale().originVolts());
    content.put("lowestCode", finite(waveform.scale().lowestCode()));
    content.put("highestCode", finite(waveform.scale().highestCode()));
    content.put("bytes", waveform.block().length);
    content.put("sha256", Seal.of(waveform.block()));
    return content;
  }

  private static ObjectNode budget(UncertaintyBudget budget) {
    ObjectNode content = JSON.createObjectNode();
    content.put("coverageFactor", finite(budget.coverageFactor()));
    ArrayNode components = content.putArray("components");
    for (UncertaintyBudget.Component component : budget.components()) {
      components
          .addObject()
          .put("name", component.name())
          .put("standardMillis", finite(component.standardMillis()))
          .put("common", component.common());
    }
    return content;
  }

  private static ObjectNode words(Map<String, String> words) {
    ObjectNode content = JSON.createObjectNode();
    words.forEach(content::put);
    return content;
  }

  /** JSON has no word for infinity: null stands for 'not known'. */
  private static @Nullable Double finite(double value) {
    return Double.isFinite(value) ? value : null;
  }

  private static String text(ObjectNode content) {
    try {
      return JSON.writeValueAsString(content);
    } catch (JsonProcessingException e) {
      throw new SessionException("an entry of the session could not be written as JSON", e);
    }
  }
}
