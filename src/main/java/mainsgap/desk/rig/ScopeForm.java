package mainsgap.desk.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.layout.VBox;
import mainsgap.bench.SimulatedUnits;

/** What a series runs on: the simulated bench, or an instrument that is found or typed. */
final class ScopeForm {
  private final RigModel model;
  private final ScopeFields fields;

  ScopeForm(RigModel model) {
    this.model = model;
    this.fields = model.fields().scope;
  }

  Rows rows() {
    Rows rows = new Rows(model.lockedProperty());
    Map<String, String> runs = new LinkedHashMap<>();
    runs.put(ScopeFields.Runs.SIMULATED.word(), "simulated bench");
    runs.put(ScopeFields.Runs.INSTRUMENT.word(), "an instrument");
    rows.oneOf(fields.runs, "The series runs on", runs);
    BooleanBinding real =
        Bindings.createBooleanBinding(fields::isReal, fields.runs.valueProperty());
    rows.add(shownWhen(real.not(), simulated()));
    rows.add(shownWhen(real, instrument()));
    return rows;
  }

  private Rows simulated() {
    Rows rows = new Rows(model.lockedProperty());
    Map<String, String> units = new LinkedHashMap<>();
    SimulatedUnits.names().forEach(name -> units.put(name, name.replace('-', ' ')));
    rows.chosen(fields.simulated, "Simulated unit (all are invented)", units);
    rows.typed(fields.seed, "Seed: the same one gives the same series", "another each time");
    rows.note(
        "A scope and a unit made of software: nothing is connected, nothing is live. Its probes have"
            + " factor 100; its output is on channel 1, its mains on channel 2.");
    return rows;
  }

  private Rows instrument() {
    Rows rows = new Rows(model.lockedProperty());
    rows.typed(
        fields.resource, "Resource name of the instrument", "TCPIP::192.0.2.20::5025::SOCKET");
    rows.typed(fields.profile, "Instrument profile", "found by questions");
    rows.heading("Find instruments");
    rows.add(new SearchPane(model).node());
    return rows;
  }

  private static Node shownWhen(BooleanBinding condition, Rows rows) {
    VBox box = new VBox(rows);
    box.visibleProperty().bind(condition);
    box.managedProperty().bind(condition);
    return box;
  }
}
