package mainsgap.desk.sound;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/** The computer's own sound device. */
public final class Loudspeaker implements SoundOutput {
  private static final AudioFormat FORMAT =
      new AudioFormat(Tones.SAMPLE_RATE_HERTZ, 16, 1, true, false);

  @Override
  public void play(byte[] pcm) {
    try (SourceDataLine line = AudioSystem.getSourceDataLine(FORMAT)) {
      line.open(FORMAT);
      line.start();
      int unused = line.write(pcm, 0, pcm.length);
      line.drain();
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
      throw new SilentException("this computer has no free sound device", e);
    }
  }
}
