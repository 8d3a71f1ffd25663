package mainsgap.desk.manners;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import javafx.application.Application;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;

/** Light or dark, and the size of type. For the UI thread. */
public final class Appearance {
  /** The size of body type where nobody chose one. */
  public static final double USUAL_POINTS = 14;

  /** Smaller cannot be read at a bench, larger leaves no room for the pictures. */
  public static final double SMALLEST_POINTS = 10;

  /** The other end. */
  public static final double LARGEST_POINTS = 40;

  private static final String DARK = "appearance.dark";
  private static final String POINTS = "appearance.type-points";

  private final DeskMemory memory;
  private final BooleanProperty dark = new SimpleBooleanProperty(this, "dark");
  private final DoubleProperty typePoints = new SimpleDoubleProperty(this, "typePoints");

  /** As it was left. */
  public Appearance(DeskMemory memory) {
    this.memory = memory;
    dark.set(memory.text(DARK).map(Boolean::parseBoolean).orElse(false));
    typePoints.set(withinLimits(memory.number(POINTS).orElse(USUAL_POINTS)));
    dark.addListener((property, was, is) -> memory.keep(DARK, Boolean.toString(is)));
    typePoints.addListener((property, was, is) -> memory.keep(POINTS, is.doubleValue()));
  }

  /** Whether light type stands on a dark ground. */
  public BooleanProperty darkProperty() {
    return dark;
  }

  /** The size of body type; all other sizes follow it. */
  public DoubleProperty typePointsProperty() {
    return typePoints;
  }

  /** Makes type larger by so many points, or smaller, within the limits. */
  public void growType(double points) {
    typePoints.set(withinLimits(typePoints.get() + points));
  }

  /** Puts the theme under the whole program. */
  public void wear() {
    Application.setUserAgentStylesheet(
        dark.get()
            ? new PrimerDark().getUserAgentStylesheet()
            : new PrimerLight().getUserAgentStylesheet());
  }

  /** Keeps it for the next time. */
  public void save() {
    memory.save();
  }

  private static double withinLimits(double points) {
    return Math.max(SMALLEST_POINTS, Math.min(LARGEST_POINTS, points));
  }
}
