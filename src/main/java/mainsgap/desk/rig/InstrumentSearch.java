package mainsgap.desk.rig;

import java.time.Duration;
import java.util.List;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import mainsgap.bench.Discovery;
import mainsgap.bench.DiscoveryEnd;
import mainsgap.bench.DiscoveryRequest;
import mainsgap.bench.FoundInstrument;
import mainsgap.desk.manners.DeskTools;
import mainsgap.waiting.StopRequest;

/** A search for instruments, which runs beside the UI thread. For the UI thread. */
final class InstrumentSearch {
  private static final Duration LISTEN = Duration.ofSeconds(3);

  private final DeskTools tools;
  private final BooleanProperty broadcast = new SimpleBooleanProperty(this, "broadcast", false);
  private final BooleanProperty identify = new SimpleBooleanProperty(this, "identify", true);
  private final BooleanProperty serial = new SimpleBooleanProperty(this, "serial", false);
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper(this, "running");
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper(this, "words", "");
  private final ObservableList<FoundInstrument> found = FXCollections.observableArrayList();
  private final ObservableList<FoundInstrument> shownFound =
      FXCollections.unmodifiableObservableList(found);
  private final ObservableList<String> notes = FXCollections.observableArrayList();
  private final ObservableList<String> shownNotes = FXCollections.unmodifiableObservableList(notes);
  private StopRequest stop = new StopRequest();

  InstrumentSearch(DeskTools tools) {
    this.tools = tools;
  }

  /** Whether the network is asked by broadcast. */
  BooleanProperty broadcastProperty() {
    return broadcast;
  }

  /** Whether each is asked who it is. */
  BooleanProperty identifyProperty() {
    return identify;
  }

  /** Whether every serial port is opened and asked. */
  BooleanProperty serialProperty() {
    return serial;
  }

  ReadOnlyBooleanProperty runningProperty() {
    return running.getReadOnlyProperty();
  }

  /** What is being done, or how it ended. */
  ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** What was found and can be reached. */
  ObservableList<FoundInstrument> found() {
    return shownFound;
  }

  /** What could not be looked at, and why. */
  ObservableList<String> notes() {
    return shownNotes;
  }

  void start() {
    if (running.get()) {
      return;
    }
    stop = new StopRequest();
    StopRequest mine = stop;
    DiscoveryRequest request =
        new DiscoveryRequest(LISTEN, broadcast.get(), identify.get(), serial.get());
    running.set(true);
    found.clear();
    notes.clear();
    words.set("looking");
    tools
        .background()
        .run(
            () -> Discovery.of(request).run(said -> tools.ui().run(() -> words.set(said)), mine),
            this::ended,
            failed -> ended(failure(failed)));
  }

  void stop() {
    stop.request();
    if (running.get()) {
      words.set("stopping");
    }
  }

  private void ended(DiscoveryEnd end) {
    running.set(false);
    found.setAll(end.instruments().stream().filter(one -> !one.links().isEmpty()).toList());
    notes.setAll(end.notes());
    words.set(
        switch (end.kind()) {
          case COMPLETE -> found.isEmpty() ? NOTHING : "found: choose one";
          case WRONG_USE -> "the search could not be made";
          case STOPPED -> "the search was stopped";
        });
  }

  private static final String NOTHING =
      "nothing was found: is the instrument on, and on this network? Its resource name can be typed"
          + " below";

  private static DiscoveryEnd failure(RuntimeException failed) {
    return new DiscoveryEnd(
        DiscoveryEnd.Kind.WRONG_USE, List.of(), List.of(String.valueOf(failed.getMessage())));
  }
}
