package mainsgap.desk;

import java.util.List;
import java.util.Objects;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import mainsgap.desk.manners.Appearance;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.desk.manners.Page;
import mainsgap.desk.manners.Sounds;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** The window: a bar with the pages in the order of the job, and the page at the front. */
final class DeskWindow {
  private static final KeyCode[] DIGITS = {KeyCode.DIGIT1, KeyCode.DIGIT2, KeyCode.DIGIT3};

  private final DeskTools tools;
  private final List<Page> pages;
  private final BorderPane root = new BorderPane();
  private final ToggleGroup steps = new ToggleGroup();
  private final Scene scene;

  DeskWindow(DeskTools tools, List<Page> pages, double width, double height) {
    this.tools = tools;
    this.pages = List.copyOf(pages);
    root.getStyleClass().add("desk");
    root.setTop(bar());
    scene = new Scene(root, width, height);
    scene
        .getStylesheets()
        .add(Objects.requireNonNull(DeskWindow.class.getResource("desk.css")).toExternalForm());
    addKeys();
    Appearance appearance = tools.appearance();
    appearance.darkProperty().addListener((property, was, is) -> wear());
    appearance.typePointsProperty().addListener((property, was, is) -> wear());
    wear();
    open(0);
  }

  Scene scene() {
    return scene;
  }

  /** Brings page {@code number}, counted from 0, to the front. */
  void open(int number) {
    steps.getToggles().get(number).setSelected(true);
    Page page = pages.get(number);
    root.setCenter(page.node());
    page.shown();
  }

  private void wear() {
    Appearance appearance = tools.appearance();
    appearance.wear();
    root.setStyle("-fx-font-size: " + appearance.typePointsProperty().get() + "px;");
    root.getStyleClass().removeAll("light", "dark");
    root.getStyleClass().add(appearance.darkProperty().get() ? "dark" : "light");
  }

  private Region bar() {
    HBox bar = new HBox();
    bar.getStyleClass().add("desk-bar");
    bar.setAlignment(Pos.CENTER_LEFT);
    for (int i = 0; i < pages.size(); i++) {
      bar.getChildren().add(step(i));
    }
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    bar.getChildren().addAll(space, silence(), mute(), volume());
    bar.getChildren()
        .addAll(
            action(
                "type-smaller",
                Material2MZ.ZOOM_OUT,
                "Smaller type (Ctrl −)",
                () -> tools.appearance().growType(-1)),
            action(
                "type-larger",
                Material2MZ.ZOOM_IN,
                "Larger type (Ctrl +)",
                () -> tools.appearance().growType(1)),
            action(
                "light-or-dark",
                Material2AL.BRIGHTNESS_MEDIUM,
                "Light or dark (Ctrl D)",
                this::turnLight));
    return bar;
  }

  private ToggleButton step(int number) {
    Page page = pages.get(number);
    ToggleButton step = new ToggleButton((number + 1) + "  " + page.title());
    step.setId("step-" + (number + 1));
    FontIcon unused = GrowingIcon.beside(step, page.icon());
    step.setToggleGroup(steps);
    step.getStyleClass().add("step");
    step.setTooltip(new Tooltip(page.title() + " (Ctrl " + (number + 1) + ")"));
    step.setOnAction(event -> open(number));
    return step;
  }

  private Label silence() {
    Label why = new Label();
    why.setId("why-silent");
    why.getStyleClass().add("why-silent");
    why.textProperty().bind(tools.sounds().whySilentProperty());
    why.visibleProperty().bind(why.textProperty().isNotEmpty());
    why.managedProperty().bind(why.visibleProperty());
    return why;
  }

  private ToggleButton mute() {
    Sounds sounds = tools.sounds();
    ToggleButton mute = new ToggleButton();
    mute.setId("mute");
    mute.setAccessibleText("No sounds");
    mute.setTooltip(new Tooltip("No sounds (Ctrl M)"));
    FontIcon icon = new FontIcon();
    icon.iconCodeProperty()
        .bind(
            Bindings.createObjectBinding(
                () -> sounds.mutedProperty().get() ? Material2MZ.VOLUME_OFF : Material2MZ.VOLUME_UP,
                sounds.mutedProperty()));
    GrowingIcon.follow(icon, mute, 1.15);
    mute.setGraphic(icon);
    mute.selectedProperty().bindBidirectional(sounds.mutedProperty());
    return mute;
  }

  private Slider volume() {
    Slider volume = new Slider(0, 1, 0);
    volume.setId("volume");
    volume.setAccessibleText("Volume of the sounds");
    volume.setTooltip(new Tooltip("Volume of the sounds"));
    volume.setBlockIncrement(0.1);
    volume.valueProperty().bindBidirectional(tools.sounds().volumeProperty());
    volume.disableProperty().bind(tools.sounds().mutedProperty());
    return volume;
  }

  private static Button action(String id, Ikon icon, String name, Runnable deed) {
    Button button = new Button();
    button.setId(id);
    FontIcon unused = GrowingIcon.beside(button, icon);
    button.setAccessibleText(name);
    button.setTooltip(new Tooltip(name));
    button.setOnAction(event -> deed.run());
    return button;
  }

  private void addKeys() {
    for (int i = 0; i < pages.size(); i++) {
      int number = i;
      key(DIGITS[i], () -> open(number));
    }
    for (int i = 0; i < pages.size(); i++) {
      addKeysOf(i);
    }
    key(KeyCode.PLUS, () -> tools.appearance().growType(1));
    key(KeyCode.EQUALS, () -> tools.appearance().growType(1));
    key(KeyCode.ADD, () -> tools.appearance().growType(1));
    key(KeyCode.MINUS, () -> tools.appearance().growType(-1));
    key(KeyCode.SUBTRACT, () -> tools.appearance().growType(-1));
    key(KeyCode.D, this::turnLight);
    key(KeyCode.M, () -> tools.sounds().mutedProperty().set(!tools.sounds().mutedProperty().get()));
  }

  /** What such a key does is seen: its page comes to the front. */
  private void addKeysOf(int number) {
    pages
        .get(number)
        .keysOfTheWindow()
        .forEach(
            (keys, deed) ->
                scene
                    .getAccelerators()
                    .put(
                        keys,
                        () -> {
                          deed.run();
                          open(number);
                        }));
  }

  private void key(KeyCode code, Runnable deed) {
    scene.getAccelerators().put(new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN), deed);
  }

  private void turnLight() {
    tools.appearance().darkProperty().set(!tools.appearance().darkProperty().get());
  }
}
