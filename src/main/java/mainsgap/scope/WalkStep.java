package mainsgap.scope;

/**
 * One message of a walk through a capture, explained.
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
public record WalkStep(
    String step,
    String key,
    String means,
    String sent,
    String reply,
    String replyMeans,
    int times) {}
