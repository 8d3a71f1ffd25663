package mainsgap.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.result.ResultIterator;
import org.jspecify.annotations.Nullable;

/**
 * A session as its entries tell it, their seals checked one after the other.
 *
 * @param captures by trial number
 */
record StoredSession(Session session, Map<Integer, StoredCapture> captures) {

  /** Reads all entries in one go, so that a writer cannot come between. */
  static StoredSession read(Path file, Handle handle) {
    int version = handle.createQuery("PRAGMA user_version").mapTo(int.class).one();
    try (ResultIterator<Entry> entries =
        handle
            .createQuery("SELECT number, kind, content, seal FROM entry ORDER BY number")
            .map(
                (row, context) ->
                    new Entry(
                        row.getLong("number"),
                        row.getString("kind"),
                        row.getString("content"),
                        row.getString("seal")))
            .iterator()) {
      return new Gathering(file, version).read(entries);
    }
  }

  /** What the entries have told so far. */
  private static final class Gathering {
    private final Path file;
    private final int version;
    private final List<LoggedTrial> trials = new ArrayList<>();
    private final List<Remark> remarks = new ArrayList<>();
    private final Map<Integer, StoredCapture> captures = new TreeMap<>();
    private @Nullable SessionHeader header;
    private Ending ending = Ending.CRASHED;
    private String lastSeal = Seal.NONE;
    private long count;

    Gathering(Path file, int version) {
      this.file = file;
      this.version = version;
    }

    StoredSession read(Iterator<Entry> entries) {
      while (entries.hasNext()) {
        Entry entry = entries.next();
        checkSeal(entry);
        take(entry);
      }
      if (header == null) {
        throw new SessionException("the session file " + file + " has no header: it is empty");
      }
      Session session =
          new Session(file, version, header, trials, remarks, ending, count, lastSeal);
      return new StoredSession(session, captures);
    }

    private void checkSeal(Entry entry) {
      if (entry.number() != count + 1) {
        throw new SessionException(
            "the seal of " + place(count + 1) + " is broken: the entry is missing");
      }
      String due = Seal.of(lastSeal, entry.number(), entry.kind(), entry.content());
      if (!due.equals(entry.seal())) {
        throw new SessionException(
            "the seal of "
                + place(entry.number())
                + " is broken: the "
                + entry.kind()
                + " or an entry before it was changed after it was sealed");
      }
      count = entry.number();
      lastSeal = entry.seal();
    }

    private void take(Entry entry) {
      EntryReading reading = new EntryReading(place(entry.number()), entry);
      if ((header == null) != entry.kind().equals(Entry.HEADER)) {
        throw reading.wrong("a header stands first, and once");
      }
      switch (entry.kind()) {
        case Entry.HEADER -> header = reading.header();
        case Entry.TRIAL -> takeTrial(reading);
        case Entry.REMARK -> {
          Remark remark = reading.remark();
          remarks.add(remark);
          ending = ending.after(remark);
          takeAboutTrial(remark, reading);
        }
        case Entry.SET_ASIDE -> setAside(reading);
        default -> throw reading.wrong("its kind is not known: " + entry.kind());
      }
    }

    private void takeTrial(EntryReading reading) {
      LoggedTrial trial = reading.trial();
      if (trial.number() != trials.size() + 1) {
        throw reading.wrong("trial " + trial.number() + " follows trial " + trials.size());
      }
      trials.add(trial);
      captures.put(trial.number(), reading.capture());
      ending = Ending.CRASHED;
    }

    private void takeAboutTrial(Remark remark, EntryReading reading) {
      Integer number = remark.trial();
      if (number == null) {
        return;
      }
      if (number < 1 || number > trials.size()) {
        throw reading.wrong("it is about trial " + number + ", which is not there");
      }
      trials.set(number - 1, trials.get(number - 1).with(remark));
    }

    private void setAside(EntryReading reading) {
      int number = reading.setAsideTrial();
      if (number < 1 || number > trials.size()) {
        throw reading.wrong("it sets trial " + number + " aside, which is not there");
      }
      trials.set(number - 1, trials.get(number - 1).setAside(reading.setAsideReason()));
    }

    private String place(long number) {
      return "entry " + number + " of the session file " + file;
    }
  }
}
