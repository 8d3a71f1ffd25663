package mainsgap.scope;

import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * One message that went out, and what came back.
 *
 * @param step the step that it belongs to, such as 'setting channel 1'
 * @param key where the profile has it, such as 'commands.arm'; empty for what the program sends by
 *     itself
 * @param sent the message
 * @param reply what came back; empty for a command
 */
record Exchanged(String step, String key, String sent, String reply) {

  static String list(double[] numbers) {
    return Arrays.stream(numbers)
        .mapToObj(number -> Words.plain(number, 9))
        .collect(Collectors.joining(","));
  }
}
