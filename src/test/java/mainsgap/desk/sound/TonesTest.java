package mainsgap.desk.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TonesTest {

  @ParameterizedTest
  @EnumSource(SoundWord.class)
  void everyWordLastsAsLongAsItsNotesAndStartsAndEndsSoftly(SoundWord word) {
    byte[] pcm = Tones.pcm(word.notes(), 0.5);
    int millis = word.notes().stream().mapToInt(Note::millis).sum();
    assertEquals(millis / 1e3, pcm.length / 2.0 / Tones.SAMPLE_RATE_HERTZ, 1e-3);
    assertTrue(Math.abs(sample(pcm, 0)) < 300, "clicks at its start");
    assertTrue(Math.abs(sample(pcm, pcm.length / 2 - 1)) < 300, "clicks at its end");
    assertTrue(millis < 1500, "the next word may be due already");
  }

  @Test
  void noSampleExceedsTheVolume() {
    for (SoundWord word : SoundWord.values()) {
      byte[] pcm = Tones.pcm(word.notes(), 0.5);
      for (int i = 0; i < pcm.length / 2; i++) {
        assertTrue(Math.abs(sample(pcm, i)) <= Short.MAX_VALUE / 2 + 1, word + " at " + i);
      }
    }
  }

  @Test
  void aNoteHasItsFrequency() {
    byte[] pcm = Tones.pcm(List.of(new Note(440, 1000)), 1);
    int rising = 0;
    for (int i = 1; i < pcm.length / 2; i++) {
      if (sample(pcm, i - 1) < 0 && sample(pcm, i) >= 0) {
        rising++;
      }
    }
    assertEquals(440, rising, 2);
  }

  /** Who cannot tell pitches apart still hears how many notes there are and how long. */
  @Test
  void noTwoWordsHaveOneRhythm() {
    Set<String> rhythms =
        Arrays.stream(SoundWord.values())
            .map(
                word ->
                    word.notes().stream()
                        .map(note -> (note.frequencyHertz() > 0 ? "n" : "r") + note.millis())
                        .collect(Collectors.joining(" ")))
            .collect(Collectors.toCollection(HashSet::new));
    assertEquals(SoundWord.values().length, rhythms.size());
  }

  private static int sample(byte[] pcm, int index) {
    return (short) ((pcm[2 * index] & 0xff) | (pcm[2 * index + 1] << 8));
  }
}
