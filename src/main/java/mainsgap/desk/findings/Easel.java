package mainsgap.desk.findings;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import mainsgap.desk.manners.Appearance;
import mainsgap.desk.manners.Background;
import mainsgap.report.FigureLook;
import mainsgap.report.FigureSheet;
import org.jspecify.annotations.Nullable;

/**
 * Draws the figure that is wanted, beside the UI thread, at the size of its place on the screen and
 * in the look of the window. For the UI thread.
 */
final class Easel {
  /** Smaller than this the place is being laid out, or folded away. */
  private static final int LEAST_PIXELS = 40;

  private final Appearance appearance;
  private final Captures captures;
  private final NewestWork work;
  private final ReadOnlyObjectWrapper<@Nullable Picture> picture = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper whyNone = new ReadOnlyStringWrapper("");
  private @Nullable FigureOrder order;
  private Place place = new Place(0, 0, 1);

  private record Place(int widthPixels, int heightPixels, double pixelsOfUsual) {}

  Easel(Background background, Appearance appearance, Captures captures) {
    this.captures = captures;
    this.appearance = appearance;
    this.work = new NewestWork(background);
    appearance.darkProperty().addListener((property, was, is) -> draw());
    appearance.typePointsProperty().addListener((property, was, is) -> draw());
  }

  /** What is drawn; null where nothing is. */
  ReadOnlyObjectProperty<@Nullable Picture> pictureProperty() {
    return picture.getReadOnlyProperty();
  }

  /** Why there is no picture; empty where there is one, or nothing is wanted. */
  ReadOnlyStringProperty whyNoneProperty() {
    return whyNone.getReadOnlyProperty();
  }

  /** What is wanted now; null where nothing is. */
  @Nullable FigureOrder order() {
    return order;
  }

  /** Draws what is wanted; null clears. */
  void show(@Nullable FigureOrder wanted) {
    order = wanted;
    draw();
  }

  /** Its place on the screen has this size. */
  void resize(int widthPixels, int heightPixels, double pixelsOfUsual) {
    Place now = new Place(widthPixels, heightPixels, pixelsOfUsual);
    if (!now.equals(place)) {
      place = now;
      draw();
    }
  }

  /** Whether what is seen is what is wanted. */
  boolean isSettled() {
    return work.isDone();
  }

  /** The look of the window. */
  FigureLook look() {
    return appearance.darkProperty().get() ? FigureLook.DARK : FigureLook.LIGHT;
  }

  private void draw() {
    FigureOrder wanted = order;
    if (wanted == null) {
      picture.set(null);
      whyNone.set("");
      return;
    }
    if (place.widthPixels() < LEAST_PIXELS || place.heightPixels() < LEAST_PIXELS) {
      return;
    }
    Place at = place;
    double textPixels = appearance.typePointsProperty().get() * at.pixelsOfUsual();
    FigureLook look = look();
    work.ask(
        () ->
            Picture.of(
                wanted.figure(captures),
                new FigureSheet(at.widthPixels(), at.heightPixels(), textPixels, look)),
        this::drawn,
        e -> notDrawn(String.valueOf(e.getMessage())));
  }

  /** What comes when nothing is wanted any more comes too late. */
  private void drawn(Picture made) {
    if (order != null) {
      picture.set(made);
      whyNone.set("");
    }
  }

  private void notDrawn(String why) {
    if (order != null) {
      picture.set(null);
      whyNone.set(why);
    }
  }
}
