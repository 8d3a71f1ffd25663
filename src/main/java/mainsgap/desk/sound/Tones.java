package mainsgap.desk.sound;

import java.util.List;

/** Notes as samples: pure functions. */
public final class Tones {
  /** Enough for the highest overtone used. */
  static final int SAMPLE_RATE_HERTZ = 44_100;

  /** Each note swells and fades over so long, so that it does not click. */
  private static final double EDGE_SECONDS = 0.008;

  /** Overtones make a note heard on small loudspeakers, which lack low ones. */
  private static final double[] PARTIALS = {1, 0.35, 0.18};

  private static final double PARTIALS_SUM = 1.53;

  private Tones() {}

  /**
   * The notes one after the other.
   *
   * @param volume 0 to 1
   * @return signed 16-bit little-endian samples of one channel, none beyond {@code volume} of the
   *     whole scale
   */
  public static byte[] pcm(List<Note> notes, double volume) {
    int samples = notes.stream().mapToInt(Tones::samples).sum();
    byte[] pcm = new byte[2 * samples];
    int at = 0;
    for (Note note : notes) {
      int length = samples(note);
      for (int i = 0; i < length; i++, at += 2) {
        short value = (short) Math.round(Short.MAX_VALUE * volume * valueAt(note, i, length));
        pcm[at] = (byte) value;
        pcm[at + 1] = (byte) (value >> 8);
      }
    }
    return pcm;
  }

  private static int samples(Note note) {
    return note.millis() * SAMPLE_RATE_HERTZ / 1000;
  }

  private static double valueAt(Note note, int sample, int length) {
    double angle = 2 * Math.PI * note.frequencyHertz() * sample / SAMPLE_RATE_HERTZ;
    double sum = 0;
    for (int k = 0; k < PARTIALS.length; k++) {
      sum += PARTIALS[k] * Math.sin((k + 1) * angle);
    }
    double edge = EDGE_SECONDS * SAMPLE_RATE_HERTZ;
    double envelope = Math.min(1, Math.min(sample, length - 1 - sample) / edge);
    return envelope * sum / PARTIALS_SUM;
  }
}
