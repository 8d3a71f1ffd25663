package mainsgap.link;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import mainsgap.waiting.Clock;
import mainsgap.waiting.Deadline;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A file into which conversations with instruments are written as they go; {@code
 * src/docs/conversation-format.md} describes it. It opens links that write down what passes over
 * them. Safe for all threads.
 *
 * <p>A file that can be written no more, or is full, ends the writing and never the conversation:
 * {@link #complaint()} tells of it.
 */
public final class ConversationFile implements LinkOpener, AutoCloseable {
  /** The version of the format. */
  static final int FORMAT = 1;

  private static final Logger LOG = LoggerFactory.getLogger(ConversationFile.class);

  /** Some hours of questions, or some dozens of deep records. */
  private static final long MOST_CHARACTERS = 256L * 1024 * 1024;

  private final Path path;
  private final Clock clock;
  private final long mostCharacters;
  private final long beginNanoTime;
  private final BufferedWriter writer;
  private long written;
  private @Nullable String complaint;

  private ConversationFile(Path path, BufferedWriter writer, Clock clock, long mostCharacters) {
    this.path = path;
    this.writer = writer;
    this.clock = clock;
    this.mostCharacters = mostCharacters;
    this.beginNanoTime = clock.nanoTime();
  }

  /**
   * Makes the file.
   *
   * @param about one line on what wrote it
   * @throws LinkException with a sentence if it is there already or cannot be made
   */
  public static ConversationFile create(Path path, String about, Clock clock) {
    return create(path, about, clock, MOST_CHARACTERS);
  }

  static ConversationFile create(Path path, String about, Clock clock, long mostCharacters) {
    try {
      BufferedWriter writer =
          Files.newBufferedWriter(
              path,
              StandardCharsets.UTF_8,
              StandardOpenOption.CREATE_NEW,
              StandardOpenOption.WRITE);
      ConversationFile file = new ConversationFile(path, writer, clock, mostCharacters);
      file.write("# Mainsgap conversation, format " + FORMAT + "\n");
      file.remark(about);
      file.remark("begun " + clock.instant());
      return file;
    } catch (FileAlreadyExistsException e) {
      throw new LinkException(
          "the file " + path + " exists already, and nothing is written over: name another", e);
    } catch (NoSuchFileException e) {
      throw new LinkException(
          "the file " + path + " cannot be made: its folder is missing; make it first", e);
    } catch (IOException e) {
      throw new LinkException(
          "the file " + path + " cannot be made (" + e.getMessage() + "): name another place", e);
    }
  }

  /** Where it is. */
  public Path path() {
    return path;
  }

  /** Opens a link that writes down what passes over it. */
  @Override
  public Link open(ResourceName resource, Deadline connectBy) {
    try {
      return new RecordedLink(resource.open(connectBy), this);
    } catch (LinkException e) {
      entry(elapsed(), "failed", ConversationText.escaped(resource + " " + e.getMessage()));
      throw e;
    }
  }

  /** Writes a line for people, such as what comes next. */
  public synchronized void remark(String words) {
    write("# " + words.replaceAll("\\p{Cntrl}+", " ") + "\n");
  }

  /** Why not everything is in the file, if so. */
  public synchronized Optional<String> complaint() {
    return Optional.ofNullable(complaint);
  }

  /** Ends the file. Never throws; {@link #complaint()} tells what went wrong. */
  @Override
  public synchronized void close() {
    try {
      writer.close();
    } catch (IOException e) {
      give(e);
    }
  }

  /** The time since the file was begun. */
  Duration elapsed() {
    return Duration.ofNanos(clock.nanoTime() - beginNanoTime);
  }

  synchronized void entry(Duration at, String mark, String rest) {
    double seconds = at.toNanos() / 1e9;
    write(
        String.format(
            Locale.ROOT, "%.6f %s%s%s\n", seconds, mark, rest.isEmpty() ? "" : " ", rest));
  }

  /** Bytes that went one way: as text where they are text, else in base64. */
  synchronized void bytes(Duration at, String mark, byte[] bytes) {
    if (ConversationText.isText(bytes)) {
      entry(at, mark, ConversationText.escaped(bytes));
      return;
    }
    entry(at, mark + "=", bytes.length + " bytes");
    write(ConversationText.base64(bytes));
  }

  private void write(String text) {
    if (complaint != null) {
      return;
    }
    if (written + text.length() > mostCharacters) {
      complaint =
          path + " is full at " + mostCharacters + " characters: what came later is not in it";
      LOG.warn("{}", complaint);
      return;
    }
    try {
      writer.write(text);
      written += text.length();
    } catch (IOException e) {
      give(e);
    }
  }

  private void give(IOException e) {
    if (complaint == null) {
      complaint = path + " is not whole (" + e.getMessage() + "): make room on the disk";
      LOG.warn("{}", complaint, e);
    }
  }
}
