package mainsgap.simulation;

import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A command table whose answers begin with the header that was asked, while that is switched on.
 */
final class HeadedTable {
  private final CommandTable table;
  private boolean headed;

  HeadedTable(CommandTable table) {
    this.table = table;
  }

  void setHeaded(boolean on) {
    headed = on;
  }

  boolean isHeaded() {
    return headed;
  }

  HeadedTable query(String notation, Function<Call, @Nullable Reply> work) {
    return query(notation, 1, work);
  }

  HeadedTable query(String notation, int highestSuffix, Function<Call, @Nullable Reply> work) {
    table.query(
        notation,
        highestSuffix,
        call -> {
          Reply reply = work.apply(call);
          return headed && reply != null ? reply.behind(header(notation, call) + " ") : reply;
        });
    return this;
  }

  private static String header(String notation, Call call) {
    return ":"
        + notation
            .replaceAll("[?\\[\\]]", "")
            .replace("#", Integer.toString(call.suffix()))
            .toUpperCase(Locale.ROOT);
  }
}
