package mainsgap.cli;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import mainsgap.bench.CheckEnd;
import mainsgap.bench.ProbeFindings;
import mainsgap.bench.ProbedQuestion;
import mainsgap.bench.SeenChannel;
import mainsgap.bench.WalkedMessage;
import org.jspecify.annotations.Nullable;

/** What a check found, for scripts: names are kept. */
final class CheckJson {
  private CheckJson() {}

  static String of(CheckEnd end) {
    Map<String, @Nullable Object> document = new LinkedHashMap<>();
    document.put("outcome", end.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    document.put("sentence", end.sentence().isEmpty() ? null : end.sentence());
    document.put("probe", end.findings() == null ? null : probe(end.findings()));
    document.put("messages", end.messages().stream().map(CheckJson::message).toList());
    document.put("channels", end.seen().stream().map(CheckJson::channel).toList());
    return Json.document(document);
  }

  private static Map<String, @Nullable Object> probe(ProbeFindings findings) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("identity", findings.identity());
    values.put("profile", findings.chosen().orElse(null));
    values.put("sentence", findings.sentence());
    values.put("profiles", findings.profiles().stream().map(CheckJson::profile).toList());
    return values;
  }

  private static Map<String, @Nullable Object> profile(ProbeFindings.Profile profile) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("name", profile.name());
    values.put("fit", profile.fit().words());
    values.put("reason", profile.reason());
    values.put("questions", profile.questions().stream().map(CheckJson::question).toList());
    return values;
  }

  private static Map<String, @Nullable Object> question(ProbedQuestion question) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("query", question.query());
    values.put("wanted", question.wanted());
    values.put("answered", question.answered());
    values.put("answer", question.answer());
    values.put("fits", question.fits());
    values.put("errors", question.errors());
    return values;
  }

  private static Map<String, @Nullable Object> message(WalkedMessage message) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("step", message.step());
    values.put("key", message.key().isEmpty() ? null : message.key());
    values.put("means", message.means());
    values.put("sent", message.sent());
    values.put("reply", message.reply().isEmpty() ? null : message.reply());
    values.put("replyMeans", message.replyMeans().isEmpty() ? null : message.replyMeans());
    values.put("times", message.times());
    return values;
  }

  private static Map<String, @Nullable Object> channel(SeenChannel channel) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>();
    values.put("channel", channel.role());
    values.put("samples", channel.samples());
    values.put("durationMs", channel.durationSeconds() * 1e3);
    values.put("rmsVolts", channel.rmsVolts());
    values.put("lowestVolts", channel.lowestVolts());
    values.put("highestVolts", channel.highestVolts());
    values.put("frequencyHertz", channel.frequencyHertz());
    values.put("clippedPercent", channel.clippedPercent());
    return values;
  }
}
