package mainsgap.bench;

import java.util.List;
import java.util.stream.Collectors;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * A trial that was set aside: it stays in the session and does not count.
 *
 * @param number its number in the session
 * @param verdict what it had been judged; null where it was not
 * @param reason why it was set aside
 */
public record SetAsideTrial(int number, @Nullable Verdict verdict, String reason) {

  /** All of them in one phrase, so that no figure stands without it; empty where there are none. */
  static String words(List<SetAsideTrial> trials) {
    return trials.isEmpty()
        ? ""
        : trials.size()
            + " set aside: "
            + trials.stream().map(SetAsideTrial::words).collect(Collectors.joining("; "));
  }

  private String words() {
    return "trial " + number + (verdict == null ? "" : " (" + verdict + ")") + ", " + reason;
  }
}
