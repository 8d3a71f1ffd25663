package mainsgap.desk.trials;

import java.io.File;
import java.nio.file.Path;
import java.util.Optional;
import javafx.scene.Node;
import javafx.stage.DirectoryChooser;

/** Takes the way on that the user chooses. */
final class WaysOn {
  private final TrialsModel model;
  private final Node place;

  /**
   * The ways of a page.
   *
   * @param place the page, over whose window a folder is chosen
   */
  WaysOn(TrialsModel model, Node place) {
    this.model = model;
    this.place = place;
  }

  void take(WayOn way) {
    switch (way) {
      case OPEN_FINDINGS -> model.openInFindings();
      case CONTINUE_SESSION -> model.continueSession();
      case START_AGAIN -> model.start();
      case CHOOSE_FOLDER -> chooseFolder();
      case BACK_TO_RIG -> model.goToRig();
    }
  }

  private void chooseFolder() {
    askForFolder().ifPresent(model::startIn);
  }

  /** Asks where new sessions are to be made; nothing where the user leaves it as it is. */
  Optional<Path> askForFolder() {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle("Folder for new sessions");
    File before = model.folder().property().get().toFile();
    if (before.isDirectory()) {
      chooser.setInitialDirectory(before);
    }
    return Optional.ofNullable(chooser.showDialog(place.getScene().getWindow())).map(File::toPath);
  }
}
