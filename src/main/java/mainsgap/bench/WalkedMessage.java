package mainsgap.bench;

import mainsgap.scope.WalkStep;

/**
 * One message of a try, explained.
 *
 * @param step the step that it belongs to, such as 'setting channel 1'
 * @param key where the profile has it, such as 'commands.arm'; empty for what the program sends by
 *     itself
 * @param means what it is for, in words
 * @param sent the message
 * @param reply what came back; empty for a command
 * @param replyMeans what the reply says, in words; empty where it says nothing more
 * @param times how often it was sent in a row with the same reply
 */
public record WalkedMessage(
    String step,
    String key,
    String means,
    String sent,
    String reply,
    String replyMeans,
    int times) {

  static WalkedMessage of(WalkStep step) {
    return new WalkedMessage(
        step.step(),
        step.key(),
        step.means(),
        step.sent(),
        Words.printable(step.reply()),
        Words.printable(step.replyMeans()),
        step.times());
  }
}
