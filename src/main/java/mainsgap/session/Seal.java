package mainsgap.session;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The SHA-256 seals of a session, in lower-case hexadecimal. */
final class Seal {
  /** The seal before the first entry. */
  static final String NONE = "0".repeat(64);

  private static final String FIRST_LINE = "mainsgap session entry 1\n";

  private Seal() {}

  /** The seal of an entry: over its content and the seal before. */
  static String of(String sealBefore, long number, String kind, String content) {
    String sealed = FIRST_LINE + sealBefore + "\n" + number + "\n" + kind + "\n" + content;
    return of(sealed.getBytes(StandardCharsets.UTF_8));
  }

  /** The digest of a data block. */
  static String of(byte[] block) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(block));
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError("every Java platform has SHA-256", e);
    }
  }
}
