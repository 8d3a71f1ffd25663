package mainsgap.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The commands that an instrument knows. */
final class CommandTable {
  private final List<Entry> entries = new ArrayList<>();

  /** A command that is found, with what it was called with. */
  record Found(Function<Call, @Nullable Reply> work, int suffix) {}

  private record Entry(
      HeaderPattern pattern, int highestSuffix, Function<Call, @Nullable Reply> work) {}

  /** A command that answers nothing. */
  CommandTable command(String notation, Consumer<Call> work) {
    return command(notation, 1, work);
  }

  /** A command that answers nothing, with a numeric suffix up to {@code highestSuffix}. */
  CommandTable command(String notation, int highestSuffix, Consumer<Call> work) {
    entries.add(
        new Entry(
            HeaderPattern.of(notation),
            highestSuffix,
            call -> {
              work.accept(call);
              return null;
            }));
    return this;
  }

  /** A query. */
  CommandTable query(String notation, Function<Call, @Nullable Reply> work) {
    return query(notation, 1, work);
  }

  /** A query with a numeric suffix up to {@code highestSuffix}. */
  CommandTable query(String notation, int highestSuffix, Function<Call, @Nullable Reply> work) {
    entries.add(new Entry(HeaderPattern.of(notation), highestSuffix, work));
    return this;
  }

  /** The command of that header (from the root, upper case). */
  Found find(String header) {
    for (Entry entry : entries) {
      OptionalInt suffix = entry.pattern().suffixIn(header);
      if (suffix.isPresent()) {
        if (suffix.getAsInt() < 1 || suffix.getAsInt() > entry.highestSuffix()) {
          throw new ScpiFault(ScpiError.HEADER_SUFFIX_OUT_OF_RANGE);
        }
        return new Found(entry.work(), suffix.getAsInt());
      }
    }
    throw new ScpiFault(ScpiError.UNDEFINED_HEADER);
  }
}
