package mainsgap.desk.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import mainsgap.desk.manners.Background;
import org.junit.jupiter.api.Test;

class NewestWorkTest {
  private final Queue<Runnable> later = new ArrayDeque<>();
  private final NewestWork work = new NewestWork(new Background(later::add, Runnable::run));
  private final List<String> done = new ArrayList<>();

  private void ask(String what) {
    work.ask(() -> what, done::add, e -> done.add("failed"));
  }

  private void runAll() {
    while (!later.isEmpty()) {
      later.remove().run();
    }
  }

  @Test
  void whatWaitsIsReplacedByWhatIsNewer() {
    ask("first");
    ask("second");
    ask("third");
    assertEquals(1, later.size());

    runAll();

    assertEquals(List.of("first", "third"), done);
    ask("fourth");
    runAll();
    assertEquals(List.of("first", "third", "fourth"), done);
  }

  @Test
  void failureDoesNotHoldUpWhatWaits() {
    work.ask(
        () -> {
          throw new IllegalStateException("broken");
        },
        unused -> done.add("no"),
        e -> done.add(e.getMessage()));
    ask("next");

    runAll();

    assertEquals(List.of("broken", "next"), done);
  }
}
