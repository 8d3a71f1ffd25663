package mainsgap.link;

import java.util.function.Function;
import mainsgap.link.Announcement.Told;
import org.jspecify.annotations.Nullable;

/** Texts that a stranger announced: made short and plain before they reach a screen. */
final class AnnouncedText {
  /** An identity is longer nowhere that is known; a text record may hold 64 KB. */
  private static final int LONGEST = 64;

  private AnnouncedText() {}

  /** The keys that instruments use in their text records (common practice). */
  static Told told(Function<String, @Nullable String> text) {
    return new Told(
        plain(text.apply("Manufacturer")),
        plain(text.apply("Model")),
        plain(text.apply("SerialNumber")),
        plain(text.apply("FirmwareVersion")));
  }

  /** At most so many characters, none of which moves a terminal's cursor. */
  static String plain(@Nullable String text) {
    if (text == null) {
      return "";
    }
    String printable = text.replaceAll("[\\p{Cntrl}\\p{Cf}\\p{Co}\\p{Cs}]+", " ").strip();
    return printable.length() <= LONGEST ? printable : printable.substring(0, LONGEST - 1) + "…";
  }
}
