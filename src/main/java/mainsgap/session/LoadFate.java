package mainsgap.session;

import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** How the load fared in a trial, as a person saw it. */
public enum LoadFate {
  /** It went on as if nothing had happened. */
  RODE_THROUGH("rode through", Remark.Kind.LOAD_RODE_THROUGH),
  /** It stopped or started anew, and works. */
  RESET("reset", Remark.Kind.LOAD_RESET),
  /** It does not work any more as it did. */
  DAMAGED("damaged", Remark.Kind.LOAD_DAMAGED);

  private final String words;
  private final Remark.Kind remark;

  LoadFate(String words, Remark.Kind remark) {
    this.words = words;
    this.remark = remark;
  }

  /** The word for people. */
  public String words() {
    return words;
  }

  Remark.Kind remark() {
    return remark;
  }

  /** The fate that such a remark tells; null where it tells none. */
  static @Nullable LoadFate of(Remark.Kind kind) {
    return Stream.of(values()).filter(fate -> fate.remark == kind).findFirst().orElse(null);
  }
}
