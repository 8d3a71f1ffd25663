package mainsgap.scope;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import mainsgap.scope.StatePolling.Bit;
import mainsgap.scope.StatePolling.ByBits;
import mainsgap.scope.StatePolling.ByWords;
import mainsgap.scope.StatePolling.Question;
import mainsgap.settings.SettingsTable;

/** Reads the part of a profile that says how to ask for the acquisition's state. */
final class StateReader {
  private static final int HIGHEST_BIT = 31;
  private static final String[] QUESTION = {"query", "words", "bits", "clears-when-read"};
  private static final String[] ALL = {
    "query", "words", "bits", "clears-when-read", "questions", "otherwise"
  };

  private final TemplateReader templates;

  StateReader(TemplateReader templates) {
    this.templates = templates;
  }

  StatePolling read(SettingsTable root) {
    SettingsTable table = root.table("state", ALL);
    AcquisitionState otherwise =
        table.has("otherwise")
            ? table.choice("otherwise", AcquisitionState.class)
            : AcquisitionState.IDLE;
    if (!table.has("questions")) {
      return new StatePolling(List.of(question(table)), otherwise);
    }
    if (table.has("query")) {
      throw root.complaint("state", "needs either one 'query' or 'questions'");
    }
    return new StatePolling(questions(table), otherwise);
  }

  private List<Question> questions(SettingsTable table) {
    List<Question> questions = new ArrayList<>();
    for (SettingsTable row : table.tables("questions", QUESTION)) {
      if (!questions.isEmpty() && questions.get(questions.size() - 1) instanceof ByWords) {
        throw row.complaint(
            "query", "is never asked: the question before it has 'words' and always decides");
      }
      questions.add(question(row));
    }
    if (questions.isEmpty()) {
      throw table.complaint("questions", "is empty: write at least one");
    }
    return questions;
  }

  private Question question(SettingsTable table) {
    CommandTemplate query = templates.poll(table, "query", Set.of());
    if (table.has("words") == table.has("bits")) {
      throw table.complaint("query", "needs either 'words' or 'bits' beside it");
    }
    if (table.has("words")) {
      if (table.has("clears-when-read")) {
        throw table.complaint("clears-when-read", "is for 'bits' alone: leave it out");
      }
      return new ByWords(query, words(table.openTable("words")));
    }
    return new ByBits(query, bits(table), table.flag("clears-when-read", false));
  }

  private static Map<String, AcquisitionState> words(SettingsTable table) {
    Map<String, AcquisitionState> words = new HashMap<>();
    for (String word : table.keys()) {
      words.put(word.toUpperCase(Locale.ROOT), table.choice(word, AcquisitionState.class));
    }
    return words;
  }

  private static List<Bit> bits(SettingsTable table) {
    List<Bit> bits = new ArrayList<>();
    for (SettingsTable row : table.tables("bits", "bit", "clear", "means")) {
      bits.add(
          new Bit(
              row.whole("bit", 0, HIGHEST_BIT),
              row.flag("clear", false),
              row.choice("means", AcquisitionState.class)));
    }
    return bits;
  }
}
