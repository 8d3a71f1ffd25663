package mainsgap.cli;

import java.util.List;
import mainsgap.bench.CheckEnd;
import mainsgap.bench.ProbeFindings;
import mainsgap.bench.ProbedQuestion;
import mainsgap.bench.WalkedMessage;

/** What a check found, for people. */
final class CheckText {
  private CheckText() {}

  static String of(CheckEnd end) {
    StringBuilder text = new StringBuilder();
    if (end.findings() != null) {
      text.append(probed(end.findings()));
    }
    if (!end.messages().isEmpty()) {
      text.append(text.isEmpty() ? "" : "\n").append(walked(end.messages()));
    }
    end.seen()
        .forEach(
            channel ->
                text.append('\n').append(TextWrap.labelled(channel.role(), channel.sentence())));
    if (!end.seen().isEmpty()) {
      text.append('\n')
          .append(
              TextWrap.paragraph(
                  "The whole capture works. Compare the figures with the instrument's own screen."
                      + " Its settings are no longer what they were."))
          .append('\n');
    }
    return text.toString();
  }

  private static String probed(ProbeFindings findings) {
    StringBuilder text = new StringBuilder(TextWrap.labelled("instrument", findings.identity()));
    for (ProbeFindings.Profile profile : findings.profiles()) {
      text.append('\n')
          .append(profile.name())
          .append(": ")
          .append(profile.fit().words())
          .append('\n')
          .append(TextWrap.hanging("  ", profile.about()))
          .append('\n');
      profile.questions().forEach(question -> text.append(question(question)));
      if (!profile.reason().isEmpty()) {
        text.append(TextWrap.hanging("  because ", profile.reason())).append('\n');
      }
    }
    if (findings.isKnown()) {
      text.append('\n').append(TextWrap.paragraph(findings.sentence())).append('\n');
    }
    return text.toString();
  }

  private static String question(ProbedQuestion question) {
    String queue =
        !question.queueAnswered()
            ? "; its error queue is silent"
            : question.errors().isEmpty()
                ? ""
                : "; its error queue: " + String.join(", ", question.errors());
    return TextWrap.hanging(
            "  " + question.query() + "  ",
            (question.answered() ? "'" + question.answer() + "'" : question.answer())
                + (question.fits() ? ", as wanted" : ", wanted: " + question.wanted())
                + queue)
        + "\n";
  }

  private static String walked(List<WalkedMessage> messages) {
    StringBuilder text = new StringBuilder();
    String step = "";
    String means = "";
    for (WalkedMessage message : messages) {
      if (!message.step().equals(step)) {
        text.append(text.isEmpty() ? "" : "\n").append(message.step()).append('\n');
        step = message.step();
        means = "";
      }
      String now = message.means() + message.key();
      if (message.key().isEmpty()) {
        text.append(TextWrap.hanging("  - the program ", message.means() + ": " + line(message)))
            .append('\n');
        means = "";
        continue;
      }
      if (!now.equals(means)) {
        text.append(
                TextWrap.hanging(
                    "  - ",
                    (message.key().isEmpty()
                            ? "the program"
                            : "'" + message.key() + "' in the profile")
                        + " "
                        + message.means()
                        + ":"))
            .append('\n');
        means = now;
      }
      text.append(TextWrap.hanging("      ", line(message))).append('\n');
    }
    return text.toString();
  }

  private static String line(WalkedMessage message) {
    return message.sent()
        + (message.reply().isEmpty() ? "" : "  ->  " + message.reply())
        + (message.replyMeans().isEmpty() ? "" : "  (" + message.replyMeans() + ")")
        + (message.times() == 1 ? "" : "  " + message.times() + " times");
  }
}
