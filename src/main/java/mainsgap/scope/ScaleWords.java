package mainsgap.scope;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import mainsgap.scope.CodeLayout.ByteOrder;
import mainsgap.scope.CodeLayout.Kind;
import mainsgap.scope.RecordDescriber.Asking;

/**
 * Words of an instrument that say how samples stand in the data.
 *
 * @param codeKind signed, unsigned or floating
 * @param byteOrder which byte comes first
 * @param pointKind what a point is
 */
record ScaleWords(
    Optional<Source<Kind>> codeKind,
    Optional<Source<ByteOrder>> byteOrder,
    Optional<Source<PointKind>> pointKind) {

  static final ScaleWords NONE =
      new ScaleWords(Optional.empty(), Optional.empty(), Optional.empty());

  /** What a point of a record is. */
  enum PointKind {
    SAMPLES,
    /** The lowest and the highest of many samples: their times are lost. */
    PAIRS
  }

  /**
   * Where a word is found.
   *
   * @param name in the preamble; empty where it is asked for
   * @param query to ask for it; empty where the preamble has it
   * @param meanings by word, in capitals
   */
  record Source<E extends Enum<E>>(
      Optional<String> name, Optional<CommandTemplate> query, Map<String, E> meanings) {
    Source {
      meanings = Map.copyOf(meanings);
    }

    E in(Asking asking, NamedValues named) {
      String word =
          name.map(named::text)
              .orElseGet(() -> query.map(asking::text).map(Answers::bare).orElse(""));
      E meaning = meanings.get(word.toUpperCase(Locale.ROOT));
      if (meaning == null) {
        throw new ScopeException(
            "the instrument says '"
                + word
                + "' of its samples; its profile knows "
                + String.join(", ", new TreeSet<>(meanings.keySet())));
      }
      return meaning;
    }
  }

  /** The layout as the instrument tells it; what it does not tell is {@code otherwise}'s. */
  CodeLayout layout(CodeLayout otherwise, Asking asking, NamedValues named) {
    if (pointKind.isPresent() && pointKind.get().in(asking, named) == PointKind.PAIRS) {
      throw new ScopeException(
          "the instrument sends pairs of lowest and highest values, in which no edge can be"
              + " placed: set it to single samples by 'waveform.select' in its profile");
    }
    Kind kind = codeKind.map(source -> source.in(asking, named)).orElse(otherwise.kind());
    boolean lsbFirst =
        byteOrder
            .map(source -> source.in(asking, named) == ByteOrder.LSB_FIRST)
            .orElse(otherwise.lsbFirst());
    int bytes = kind == otherwise.kind() || kind != Kind.VOLTS ? otherwise.bytes() : Float.BYTES;
    return new CodeLayout(kind, bytes, lsbFirst);
  }
}
