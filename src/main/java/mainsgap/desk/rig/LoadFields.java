package mainsgap.desk.rig;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;

/** The load, and the owner's own names and words for everything else. */
final class LoadFields {
  /** One of them. */
  record Condition(Field<String> name, Field<String> words) {}

  final Field<String> description = new Field<>("load.description", "the load", Readings.words());
  final ObservableList<Condition> conditions = FXCollections.observableArrayList();
  private int made;

  List<Field<?>> all() {
    return Stream.concat(
            Stream.<Field<?>>of(description),
            conditions.stream().flatMap(one -> Stream.of(one.name(), one.words())))
        .toList();
  }

  void show(@Nullable String load, Map<String, String> named) {
    description.type(load);
    conditions.clear();
    named.forEach(this::add);
  }

  /** One more, of which nothing may be said yet. */
  Condition add(String name, String words) {
    made++;
    Condition condition =
        new Condition(
            new Field<>("condition." + made + ".name", "the condition's name", Readings.words()),
            new Field<>("condition." + made + ".words", "the condition", Readings.words()));
    condition.name().type(name);
    condition.words().type(words);
    conditions.add(condition);
    return condition;
  }

  /** Those that say something. */
  Map<String, String> named() {
    Map<String, String> named = new LinkedHashMap<>();
    for (Condition one : conditions) {
      if (!one.name().text().isEmpty() && !one.words().text().isEmpty()) {
        named.put(one.name().text(), one.words().text());
      }
    }
    return named;
  }
}
