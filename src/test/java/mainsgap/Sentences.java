package mainsgap;

import static org.junit.jupiter.api.Assertions.assertTrue;

/** Checks of what an exception says to people. */
public final class Sentences {
  private Sentences() {}

  /** The sentence of {@code said} holds each of {@code parts}. */
  public static void assertSays(Throwable said, String... parts) {
    String sentence = String.valueOf(said.getMessage());
    for (String part : parts) {
      assertTrue(sentence.contains(part), () -> "'" + part + "' is not in: " + sentence);
    }
  }
}
