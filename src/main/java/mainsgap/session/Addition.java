package mainsgap.session;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a person adds to a session beside its trials, while a series runs or after it. Nothing that
 * stands in the session is changed by it.
 */
public sealed interface Addition {
  /** Nobody reads a longer one; whole reports have a place of their own. */
  int LONGEST_TEXT = 2000;

  /** The trial that it is about; null where it is about the session. */
  @Nullable Integer trial();

  /** Why {@code log} cannot take it, one sentence; empty where it can. */
  Optional<String> whyNot(SessionLog log);

  /** Appends it; on return it is durable. Gives the entry's seal. */
  String appendTo(SessionLog log, Instant at);

  /**
   * The trial no longer counts; it stays as it is.
   *
   * @param reason why, for whoever reads the session
   */
  record SetAside(Integer trial, String reason) implements Addition {
    @Override
    public Optional<String> whyNot(SessionLog log) {
      return log.whyNotSetAside(trial)
          .or(() -> whyNotText(reason, "trial " + trial + " is set aside only with a reason"));
    }

    @Override
    public String appendTo(SessionLog log, Instant at) {
      return log.setAside(trial, reason, at);
    }
  }

  /** A note about a trial, or about the session. */
  record Note(@Nullable Integer trial, String text) implements Addition {
    @Override
    public Optional<String> whyNot(SessionLog log) {
      return (trial == null ? Optional.<String>empty() : log.whyNotTrial(trial))
          .or(() -> whyNotText(text, "an empty note says nothing: write a word, or leave it"));
    }

    @Override
    public String appendTo(SessionLog log, Instant at) {
      return log.append(new Remark(at, Remark.Kind.NOTE, trial, text));
    }
  }

  /** How the load fared in a trial; the last word on it counts. */
  record Load(Integer trial, LoadFate fate) implements Addition {
    @Override
    public Optional<String> whyNot(SessionLog log) {
      return log.whyNotTrial(trial);
    }

    @Override
    public String appendTo(SessionLog log, Instant at) {
      return log.append(new Remark(at, fate.remark(), trial, "the load " + fate.words()));
    }
  }

  private static Optional<String> whyNotText(String text, String blank) {
    if (text.isBlank()) {
      return Optional.of(blank);
    }
    return text.length() <= LONGEST_TEXT
        ? Optional.empty()
        : Optional.of(
            "the text has "
                + text.length()
                + " characters; allowed: at most "
                + LONGEST_TEXT
                + ": shorten it");
  }
}
