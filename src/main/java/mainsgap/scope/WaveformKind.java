package mainsgap.scope;

import java.util.Arrays;
import java.util.stream.Stream;

/** What the samples of a family are, and where it is told what they mean. */
enum WaveformKind {
  VALUES_IN_VOLTS,
  TEN_FIELD_PREAMBLE,
  SCALE_VALUES;

  /** The keys that may stand in its table. */
  String[] keys() {
    Stream<String> common =
        Stream.of("kind", "before", "select", "prepare", "window", "data", "chunk-samples");
    Stream<String> codes =
        Stream.of(
            "byte-order", "bytes-per-code", "signed", "lowest-code", "highest-code", "hole-code");
    Stream<String> own =
        switch (this) {
          case VALUES_IN_VOLTS -> Stream.of("numbers", "byte-order", "values");
          case TEN_FIELD_PREAMBLE -> Stream.concat(Stream.of("preamble", "scaling"), codes);
          case SCALE_VALUES -> Stream.concat(Stream.of("preamble", "values", "words"), codes);
        };
    return Stream.concat(common, own).toArray(String[]::new);
  }

  /** The keys that may stand in the table of any kind: which one it is has to be read first. */
  static String[] keysOfAll() {
    return Arrays.stream(values())
        .flatMap(kind -> Arrays.stream(kind.keys()))
        .distinct()
        .toArray(String[]::new);
  }
}
