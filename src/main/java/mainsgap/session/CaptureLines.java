package mainsgap.session;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a text file, one at a time and each of bounded length. A file that begins with the
 * byte order mark of UTF-16 is taken as such; a line that is no UTF-8 is taken as Latin-1.
 */
final class CaptureLines implements AutoCloseable {
  /** A table of numbers has no longer lines. */
  private static final int LONGEST_LINE = 65_536;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private final Path file;
  private final Reader bytes;
  private final boolean isDecoded;
  private int number;
  private boolean afterReturn;

  private CaptureLines(Path file, Reader bytes, boolean isDecoded) {
    this.file = file;
    this.bytes = bytes;
    this.isDecoded = isDecoded;
  }

  static CaptureLines open(Path file) {
    if (Files.isDirectory(file)) {
      throw new CaptureFileException(file + " is a folder; name a capture file in it");
    }
    if (!Files.exists(file)) {
      throw new CaptureFileException("there is no capture file " + file + "; check the path");
    }
    if (!Files.isRegularFile(file)) {
      throw new CaptureFileException(
          file + " is a pipe or a device, no file; save the capture to a file and name that");
    }
    try {
      InputStream stream = new BufferedInputStream(Files.newInputStream(file));
      boolean isUtf16 = beginsAsUtf16(stream);
      // Latin-1 hands the bytes through as they are
      Charset charset = isUtf16 ? StandardCharsets.UTF_16 : StandardCharsets.ISO_8859_1;
      return new CaptureLines(
          file, new BufferedReader(new InputStreamReader(stream, charset)), isUtf16);
    } catch (IOException e) {
      throw new CaptureFileException("could not open the capture file " + file, e);
    }
  }

  private static boolean beginsAsUtf16(InputStream stream) throws IOException {
    stream.mark(2);
    int first = stream.read();
    int second = stream.read();
    stream.reset();
    return (first == 0xFE && second == 0xFF) || (first == 0xFF && second == 0xFE);
  }

  /** The number of the line that was read last, from 1. */
  int number() {
    return number;
  }

  /** The next line, or null after the last one. */
  @Nullable String next() {
    StringBuilder line = new StringBuilder();
    int found = read();
    if (found == '\n' && afterReturn) {
      found = read();
    }
    afterReturn = false;
    if (found < 0) {
      return null;
    }
    number++;
    while (found >= 0 && found != '\n' && found != '\r') {
      take((char) found, line);
      found = read();
    }
    afterReturn = found == '\r';
    String text = isDecoded ? line.toString() : decoded(line);
    return number == 1 && text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
  }

  private void take(char found, StringBuilder line) {
    if (found == 0) {
      throw wrong("holds bytes that are no text: it is a binary file; export the capture as CSV");
    }
    if (line.length() == LONGEST_LINE) {
      throw wrong("is longer than " + LONGEST_LINE + " characters: this is no table of numbers");
    }
    line.append(found);
  }

  private int read() {
    try {
      return bytes.read();
    } catch (IOException e) {
      throw new CaptureFileException("could not read the capture file " + file, e);
    }
  }

  private static String decoded(StringBuilder line) {
    String latin = line.toString();
    if (latin.chars().allMatch(c -> c < 0x80)) {
      return latin;
    }
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(latin.getBytes(StandardCharsets.ISO_8859_1)))
          .toString();
    } catch (CharacterCodingException e) {
      return latin;
    }
  }

  /** The complaint that the line read last gives rise to. */
  CaptureFileException wrong(String why) {
    return wrong(file, number, why);
  }

  static CaptureFileException wrong(Path file, int line, String why) {
    return new CaptureFileException(file + ", line " + line + " " + why);
  }

  @Override
  public void close() {
    try {
      bytes.close();
    } catch (IOException e) {
      throw new CaptureFileException("could not close the capture file " + file, e);
    }
  }

  /** So much of a text as a sentence can carry. */
  static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "...";
  }
}
