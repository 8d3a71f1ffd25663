package mainsgap.desk.manners;

import javafx.scene.control.Labeled;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;

/** An icon as large as the type that it stands beside. */
public final class GrowingIcon {
  private static final double PART_OF_TYPE = 1.15;

  private GrowingIcon() {}

  /** The icon of {@code owner}. */
  public static FontIcon beside(Labeled owner, Ikon icon) {
    FontIcon made = new FontIcon(icon);
    follow(made, owner, PART_OF_TYPE);
    owner.setGraphic(made);
    return made;
  }

  /** Keeps {@code icon} at {@code part} of the size of the type of {@code owner}. */
  public static void follow(FontIcon icon, Labeled owner, double part) {
    size(icon, part * owner.getFont().getSize());
    owner.fontProperty().addListener((property, was, is) -> size(icon, part * is.getSize()));
  }

  /** By its style, which goes before that of the theme, and in which its font stands already. */
  private static void size(FontIcon icon, double pixels) {
    String others =
        icon.getStyle() == null ? "" : icon.getStyle().replaceAll("-fx-icon-size:[^;]*;", "");
    icon.setStyle(others + "-fx-icon-size: " + Math.round(pixels) + "px;");
  }
}
