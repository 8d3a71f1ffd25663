package mainsgap.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.stage.Stage;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Page;

/** A window with pages in it, as the program opens it; for any thread but the toolkit's. */
public final class DeskStage {
  private final DeskTools tools;
  private final Stage stage;

  private DeskStage(DeskTools tools, Stage stage) {
    this.tools = tools;
    this.stage = stage;
  }

  /** Opens one with a single page. */
  public static DeskStage of(DeskTools tools, Page page, double width, double height) {
    return of(tools, List.of(page), width, height);
  }

  /** Opens one with the first of {@code pages} at the front. */
  public static DeskStage of(DeskTools tools, List<Page> pages, double width, double height) {
    return of(tools, DeskToolkit.onFx(() -> new DeskWindow(tools, pages, width, height)));
  }

  static DeskStage of(DeskTools tools, DeskWindow window) {
    return new DeskStage(
        tools,
        DeskToolkit.onFx(
            () -> {
              Stage made = new Stage();
              made.setScene(window.scene());
              made.show();
              return made;
            }));
  }

  /** What it shows. */
  public Scene scene() {
    return stage.getScene();
  }

  /** The node of this selector, on the toolkit's thread. */
  public Node node(String selector) {
    return Objects.requireNonNull(scene().lookup(selector), selector);
  }

  /** Makes it dark, or light. */
  public void dark(boolean dark) {
    DeskToolkit.doOnFx(() -> tools.appearance().darkProperty().set(dark));
  }

  /** Makes it so large. */
  public void size(double width, double height) {
    DeskToolkit.doOnFx(
        () -> {
          stage.setWidth(width);
          stage.setHeight(height);
        });
    DeskToolkit.await(
        "the new size", () -> scene().getWidth() == width && scene().getHeight() == height);
  }

  /** Writes what it shows now. */
  public Path shot(String name) {
    return Shots.save(scene(), name);
  }

  /** Closes it, light again. */
  public void close() {
    DeskToolkit.doOnFx(
        () -> {
          stage.close();
          tools.appearance().darkProperty().set(false);
        });
  }
}
