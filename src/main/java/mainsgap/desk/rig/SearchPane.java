package mainsgap.desk.rig;

import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.InvalidationListener;
import javafx.beans.property.BooleanProperty;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import mainsgap.bench.FoundInstrument;
import mainsgap.desk.manners.GrowingIcon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2MZ;

/** Looks for instruments and lets one be chosen. */
final class SearchPane {
  private final RigModel model;
  private final InstrumentSearch search;
  private final VBox results = new VBox();
  private final VBox node = new VBox();

  SearchPane(RigModel model) {
    this.model = model;
    this.search = model.search();
    node.getStyleClass().add("rig-rows");
    results.getStyleClass().add("rig-rows");
    results.setId("found-instruments");
    Label words = Rows.label("", "rig-note");
    words.setId("search-words");
    words.textProperty().bind(search.wordsProperty());
    Rows.showWhileSaid(words);
    node.getChildren()
        .addAll(
            tick(
                "search-identify",
                "Ask each who it is (*IDN?, nothing else is sent)",
                search.identifyProperty()),
            tick(
                "search-broadcast",
                "Also ask by broadcast: some networks do not like that",
                search.broadcastProperty()),
            tick(
                "search-serial",
                "Also ask at serial ports: only where you know what hangs on each",
                search.serialProperty()),
            buttons(),
            words,
            results);
    InvalidationListener show = change -> show();
    search.found().addListener(show);
    search.notes().addListener(show);
    show();
  }

  VBox node() {
    return node;
  }

  private HBox buttons() {
    Button find = new Button("Find");
    FontIcon unused = GrowingIcon.beside(find, Material2MZ.SEARCH);
    find.setId("find-instruments");
    find.disableProperty().bind(search.runningProperty().or(model.lockedProperty()));
    Button stop = new Button("Stop");
    stop.setId("stop-search");
    stop.disableProperty().bind(search.runningProperty().not());
    find.setOnAction(
        event -> {
          search.start();
          stop.requestFocus();
        });
    stop.setOnAction(event -> search.stop());
    HBox buttons = new HBox(find, stop);
    buttons.getStyleClass().add("rig-choices");
    return buttons;
  }

  private CheckBox tick(String id, String words, BooleanProperty property) {
    CheckBox tick = new CheckBox(words);
    tick.setId(id);
    tick.setWrapText(true);
    tick.selectedProperty().bindBidirectional(property);
    tick.disableProperty().bind(search.runningProperty().or(model.lockedProperty()));
    return tick;
  }

  private void show() {
    results.getChildren().clear();
    for (FoundInstrument one : search.found()) {
      for (FoundInstrument.Link link : one.links()) {
        results.getChildren().add(choice(one, link));
      }
    }
    search
        .notes()
        .forEach(
            note -> results.getChildren().add(Rows.label(Rows.capital(note), "rig-complaint")));
  }

  private Button choice(FoundInstrument one, FoundInstrument.Link link) {
    Button choice =
        new Button(named(one) + "\n" + link.resource() + " (" + link.source().word() + ")");
    choice.getStyleClass().add("rig-found");
    choice.setWrapText(true);
    choice.setMaxWidth(Double.MAX_VALUE);
    choice.disableProperty().bind(model.lockedProperty());
    choice.setOnAction(event -> model.fields().scope.resource.type(link.resource()));
    return choice;
  }

  private static String named(FoundInstrument one) {
    String identity =
        Stream.of(one.manufacturer(), one.model(), one.serial())
            .filter(word -> !Objects.toString(word, "").isBlank())
            .collect(Collectors.joining(" "));
    String words = identity.isBlank() ? one.name() : identity;
    return one.remark().isBlank() ? words : words + "; " + one.remark();
  }
}
