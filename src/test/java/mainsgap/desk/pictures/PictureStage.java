package mainsgap.desk.pictures;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.Objects;
import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import mainsgap.desk.DeskToolkit;
import mainsgap.desk.Shots;

/** A window with one picture in it. */
final class PictureStage {
  private final StackPane root;
  private final Stage stage;

  PictureStage(Region picture, double width, double height) {
    root = DeskToolkit.onFx(() -> new StackPane(picture));
    stage =
        DeskToolkit.onFx(
            () -> {
              Application.setUserAgentStylesheet(new PrimerLight().getUserAgentStylesheet());
              root.setStyle("-fx-font-size: 14px; -fx-background-color: -color-bg-default;");
              Stage made = new Stage();
              Scene scene = new Scene(root, width, height);
              scene
                  .getStylesheets()
                  .add(
                      Objects.requireNonNull(
                              DeskToolkit.class.getResource("/mainsgap/desk/desk.css"))
                          .toExternalForm());
              made.setScene(scene);
              made.show();
              return made;
            });
  }

  void close() {
    DeskToolkit.doOnFx(stage::close);
  }

  /** At once, not with the next pulse. */
  void layOut() {
    DeskToolkit.doOnFx(
        () -> {
          root.applyCss();
          root.layout();
        });
  }

  /** In light and in dark. */
  void shoot(String name) {
    Shots.save(stage.getScene(), name);
    DeskToolkit.doOnFx(
        () -> Application.setUserAgentStylesheet(new PrimerDark().getUserAgentStylesheet()));
    Shots.save(stage.getScene(), name + "-dark");
    DeskToolkit.doOnFx(
        () -> Application.setUserAgentStylesheet(new PrimerLight().getUserAgentStylesheet()));
  }

  /** As on a screen of another size, with type of another size. */
  void resize(double width, double height, double typePixels) {
    DeskToolkit.doOnFx(
        () -> {
          root.setStyle(
              "-fx-font-size: " + typePixels + "px; -fx-background-color: -color-bg-default;");
          stage.setWidth(width);
          stage.setHeight(height);
        });
    DeskToolkit.await(
        "the other size", () -> root.getWidth() == width && root.getHeight() == height);
  }
}
