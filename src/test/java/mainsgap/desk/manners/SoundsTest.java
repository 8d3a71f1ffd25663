package mainsgap.desk.manners;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import mainsgap.desk.sound.Loudspeaker;
import mainsgap.desk.sound.SoundWord;
import mainsgap.desk.sound.Tones;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SoundsTest {
  private static final long LIMIT_SECONDS = 10;

  private final DeskMemory memory;
  private final BlockingQueue<byte[]> heard = new LinkedBlockingQueue<>();

  SoundsTest(@TempDir Path folder) {
    memory = DeskMemory.in(folder);
  }

  @Test
  void aWordIsHeardAsLoudAsItIsSet() throws InterruptedException {
    try (Sounds sounds = new Sounds(heard::add, memory, Runnable::run)) {
      sounds.volumeProperty().set(0.25);
      sounds.say(SoundWord.ARMED);
      byte @Nullable [] pcm = heard.poll(LIMIT_SECONDS, TimeUnit.SECONDS);
      assertEquals(
          java.util.Arrays.hashCode(Tones.pcm(SoundWord.ARMED.notes(), 0.25)),
          java.util.Arrays.hashCode(pcm));
    }
  }

  @Test
  void nothingIsHeardOnceMuted() throws InterruptedException {
    try (Sounds sounds = new Sounds(heard::add, memory, Runnable::run)) {
      sounds.mutedProperty().set(true);
      sounds.say(SoundWord.FAILED);
      sounds.mutedProperty().set(false);
      sounds.say(SoundWord.CAUGHT);
      byte @Nullable [] pcm = heard.poll(LIMIT_SECONDS, TimeUnit.SECONDS);
      assertEquals(Tones.pcm(SoundWord.CAUGHT.notes(), 0.6).length, pcm == null ? 0 : pcm.length);
      assertTrue(heard.isEmpty());
    }
  }

  @Test
  void volumeIsAsItWasLeft() {
    try (Sounds sounds = new Sounds(heard::add, memory, Runnable::run)) {
      sounds.volumeProperty().set(0.3);
    }
    try (Sounds next = new Sounds(heard::add, memory, Runnable::run)) {
      assertEquals(0.3, next.volumeProperty().get());
    }
  }

  @Test
  void aComputerWithoutASoundDeviceSaysSo() throws InterruptedException {
    BlockingQueue<String> told = new LinkedBlockingQueue<>();
    try (Sounds sounds =
        new Sounds(
            new Loudspeaker(),
            memory,
            change -> {
              change.run();
              told.add("changed");
            })) {
      sounds.say(SoundWord.CAUGHT);
      assertEquals("changed", told.poll(LIMIT_SECONDS, TimeUnit.SECONDS));
      // With a device it was heard, without one it is said: never an exception on the thread.
      String why = sounds.whySilentProperty().get();
      assertTrue(why.isEmpty() || why.equals("this computer has no free sound device"), why);
    }
  }
}
