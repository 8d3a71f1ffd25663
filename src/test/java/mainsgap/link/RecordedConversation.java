package mainsgap.link;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.OptionalInt;
import mainsgap.waiting.Deadline;

/**
 * Replays a conversation file: answers what was recorded as long as the program says what it said
 * then. Anything else fails the test with the line of the file. {@code
 * src/docs/conversation-format.md} describes the format.
 */
public final class RecordedConversation implements LinkOpener {
  private final Path file;
  private final List<Entry> entries = new ArrayList<>();
  private int next;

  /** A line; {@code base64} is empty where the bytes are the text of {@code rest}. */
  private record Entry(int line, String mark, String rest, String base64) {
    byte[] bytes() {
      return base64.isEmpty() ? unescaped(rest) : Base64.getDecoder().decode(base64);
    }
  }

  /** Reads a conversation file. */
  public RecordedConversation(Path file) {
    this.file = file;
    try {
      List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
      if (lines.isEmpty() || !lines.get(0).equals("# Mainsgap conversation, format 1")) {
        throw new AssertionError(file + " is no conversation of format 1");
      }
      for (int i = 0; i < lines.size(); i++) {
        String line = lines.get(i);
        if (line.startsWith("#")) {
          continue;
        }
        String[] parts = line.split(" ", 3);
        String rest = parts.length > 2 ? parts[2] : "";
        if (parts[1].endsWith("=")) {
          StringBuilder base64 = new StringBuilder();
          int at = i;
          while (i + 1 < lines.size() && lines.get(i + 1).startsWith("  ")) {
            base64.append(lines.get(++i).strip());
          }
          entries.add(new Entry(at + 1, parts[1].substring(0, 1), rest, base64.toString()));
        } else {
          entries.add(new Entry(i + 1, parts[1], rest, ""));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The resource of the first link. */
  public ResourceName resource() {
    return ResourceName.parse(entries.get(0).rest().replaceFirst(", ends marked$", ""));
  }

  /** Fails where the program has left something of the recording unsaid. */
  public void assertFinished() {
    if (next < entries.size()) {
      throw new AssertionError(
          place(entries.get(next)) + " and what follows never came: the program ended before");
    }
  }

  @Override
  public Link open(ResourceName resource, Deadline connectBy) {
    Entry entry = taken("open", "opened a link");
    return new Replayed(resource, entry.rest().endsWith(", ends marked"));
  }

  private boolean comes(String mark) {
    return next < entries.size() && entries.get(next).mark().equals(mark);
  }

  private Entry taken(String mark, String did) {
    if (!comes(mark)) {
      throw new AssertionError(
          next < entries.size()
              ? place(entries.get(next)) + ", but the program " + did
              : file + " is at its end, but the program " + did);
    }
    return entries.get(next++);
  }

  private void fail() {
    if (comes("time-out")) {
      next++;
      throw new LinkTimeoutException("the recorded time-out");
    }
    if (comes("lost")) {
      throw new LinkClosedException(entries.get(next++).rest());
    }
  }

  private String place(Entry entry) {
    return file + " line " + entry.line() + " has '" + entry.mark() + " " + entry.rest() + "'";
  }

  private static byte[] unescaped(String text) {
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c != '\\') {
        plain.append(c);
        continue;
      }
      char kind = text.charAt(++i);
      switch (kind) {
        case 'n' -> plain.append('\n');
        case 'r' -> plain.append('\r');
        case 't' -> plain.append('\t');
        case 'x' -> {
          plain.append((char) Integer.parseInt(text.substring(i + 1, i + 3), 16));
          i += 2;
        }
        default -> plain.append(kind);
      }
    }
    return plain.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  private final class Replayed implements Link {
    private final ResourceName resource;
    private final boolean marksMessageEnd;
    private ByteBuffer rest = ByteBuffer.allocate(0);

    Replayed(ResourceName resource, boolean marksMessageEnd) {
      this.resource = resource;
      this.marksMessageEnd = marksMessageEnd;
    }

    @Override
    public ResourceName resource() {
      return resource;
    }

    @Override
    public void write(byte[] message, Deadline deadline) {
      String said = ConversationText.escaped(message);
      Entry entry = taken(">", "sent '" + said + "'");
      if (!ConversationText.escaped(entry.bytes()).equals(said)) {
        next--;
        throw new AssertionError(place(entry) + ", but the program sent '" + said + "'");
      }
      fail();
    }

    @Override
    public Received read(ByteBuffer into, Deadline deadline) {
      if (!rest.hasRemaining()) {
        fail();
        if (comes("end")) {
          next++;
          return new Received(0, true);
        }
        rest = ByteBuffer.wrap(taken("<", "waited for a reply").bytes());
      }
      int bytes = Math.min(into.remaining(), rest.remaining());
      into.put(rest.slice().limit(bytes));
      rest.position(rest.position() + bytes);
      boolean ended = !rest.hasRemaining() && comes("end");
      if (ended) {
        next++;
      }
      return new Received(bytes, ended);
    }

    @Override
    public boolean marksMessageEnd() {
      return marksMessageEnd;
    }

    @Override
    public OptionalInt statusByte(Deadline deadline) {
      fail();
      String status = taken("status", "asked for the status byte").rest();
      return status.equals("none") ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(status));
    }

    @Override
    public void clear(Deadline deadline) {
      Entry unused = taken("clear", "cleared the link");
      rest = ByteBuffer.allocate(0);
      fail();
    }

    @Override
    public void close() {
      if (comes("close")) {
        next++;
      }
    }
  }
}
