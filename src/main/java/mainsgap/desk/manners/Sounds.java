package mainsgap.desk.manners;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import mainsgap.desk.sound.Loudspeaker;
import mainsgap.desk.sound.SilentException;
import mainsgap.desk.sound.SoundOutput;
import mainsgap.desk.sound.SoundWord;
import mainsgap.desk.sound.Tones;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Says words by sound, one after the other on a thread of its own. Where two wait already the older
 * is dropped: late it would mislead. For the UI thread.
 */
public final class Sounds implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Sounds.class);
  private static final String VOLUME = "sound.volume";
  private static final String MUTED = "sound.muted";
  private static final double USUAL_VOLUME = 0.6;
  private static final int WAITING_WORDS = 2;

  private final SoundOutput output;
  private final UiThread ui;
  private final ThreadPoolExecutor player;
  private final DoubleProperty volume = new SimpleDoubleProperty(this, "volume");
  private final BooleanProperty muted = new SimpleBooleanProperty(this, "muted");
  private final ReadOnlyStringWrapper whySilent = new ReadOnlyStringWrapper(this, "whySilent", "");

  Sounds(SoundOutput output, DeskMemory memory, UiThread ui) {
    this.output = output;
    this.ui = ui;
    this.player =
        new ThreadPoolExecutor(
            1,
            1,
            0,
            TimeUnit.SECONDS,
            new ArrayBlockingQueue<>(WAITING_WORDS),
            Sounds::thread,
            new ThreadPoolExecutor.DiscardOldestPolicy());
    volume.set(Math.max(0, Math.min(1, memory.number(VOLUME).orElse(USUAL_VOLUME))));
    muted.set(memory.text(MUTED).map(Boolean::parseBoolean).orElse(false));
    volume.addListener((property, was, is) -> memory.keep(VOLUME, is.doubleValue()));
    muted.addListener((property, was, is) -> memory.keep(MUTED, Boolean.toString(is)));
  }

  /** On the computer's own sound device, as loud as it was left. */
  public static Sounds onThisComputer(DeskMemory memory, UiThread ui) {
    return new Sounds(new Loudspeaker(), memory, ui);
  }

  /** Heard by nobody. */
  public static Sounds none(DeskMemory memory) {
    return new Sounds(pcm -> {}, memory, Runnable::run);
  }

  /** How loud, 0 to 1. */
  public DoubleProperty volumeProperty() {
    return volume;
  }

  /** Whether nothing is to be heard. */
  public BooleanProperty mutedProperty() {
    return muted;
  }

  /** Why nothing can be heard; empty where something can, or has not been tried. */
  public ReadOnlyStringProperty whySilentProperty() {
    return whySilent.getReadOnlyProperty();
  }

  /** Says {@code word}, soon. */
  public void say(SoundWord word) {
    if (muted.get() || volume.get() <= 0) {
      return;
    }
    double loudness = volume.get();
    player.execute(() -> play(word, loudness));
  }

  private void play(SoundWord word, double loudness) {
    try {
      output.play(Tones.pcm(word.notes(), loudness));
      ui.run(() -> whySilent.set(""));
    } catch (SilentException e) {
      LOG.debug("{} was not heard", word, e);
      ui.run(() -> whySilent.set(String.valueOf(e.getMessage())));
    }
  }

  @Override
  public void close() {
    player.shutdown();
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "desk-sound");
    thread.setDaemon(true);
    return thread;
  }
}
