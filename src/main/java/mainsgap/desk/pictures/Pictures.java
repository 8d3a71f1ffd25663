package mainsgap.desk.pictures;

import java.util.Objects;

/** What all pictures share. */
final class Pictures {
  /** The style sheet, which each picture brings along. */
  static final String SHEET =
      Objects.requireNonNull(Pictures.class.getResource("pictures.css")).toExternalForm();

  private Pictures() {}
}
