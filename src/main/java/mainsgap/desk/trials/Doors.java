package mainsgap.desk.trials;

import java.nio.file.Path;
import java.util.function.Consumer;

/**
 * The ways from this page to the others.
 *
 * @param findings opens a session there
 * @param rig goes there
 */
public record Doors(Consumer<Path> findings, Runnable rig) {
  /** Leads nowhere. */
  static final Doors NONE = new Doors(file -> {}, () -> {});
}
