package mainsgap.desk.rig;

import org.jspecify.annotations.Nullable;

/** How typed words become a value. */
@FunctionalInterface
interface Reading<T> {

  /**
   * The value of {@code text}, which is neither blank nor has space around it.
   *
   * @throws BadTextException with a sentence that goes on after the setting's name
   */
  @Nullable T of(String text);

  /** What was typed cannot be used. */
  final class BadTextException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    BadTextException(String rest) {
      super(rest);
    }
  }
}
