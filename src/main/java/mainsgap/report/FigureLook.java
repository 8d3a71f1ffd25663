package mainsgap.report;

import java.awt.Color;
import java.util.List;

/**
 * The colours of a figure. Series colours are those of Okabe and Ito (2002), which colour-blind
 * eyes tell apart; nothing is said by colour alone.
 */
public enum FigureLook {
  /** For paper and bright rooms. */
  LIGHT(0xFFFFFF, 0x1B1F24, 0x57606A, 0xD0D7DE),
  /** For dark rooms and video. */
  DARK(0x0D1117, 0xF0F3F6, 0xA9B4C0, 0x30363D);

  private static final List<Color> ON_LIGHT =
      List.of(new Color(0x0072B2), new Color(0xD55E00), new Color(0x007A5A), new Color(0xA6477F));
  private static final List<Color> ON_DARK =
      List.of(new Color(0x56B4E9), new Color(0xE69F00), new Color(0x2FC49A), new Color(0xE08FBF));

  private final Color ground;
  private final Color text;
  private final Color quiet;
  private final Color grid;

  FigureLook(int ground, int text, int quiet, int grid) {
    this.ground = new Color(ground);
    this.text = new Color(text);
    this.quiet = new Color(quiet);
    this.grid = new Color(grid);
  }

  Color ground() {
    return ground;
  }

  Color text() {
    return text;
  }

  /** For what stands back: notes, axes, trials that do not count. */
  Color quiet() {
    return quiet;
  }

  Color grid() {
    return grid;
  }

  /** The colour of the unit at {@code index}; its shape tells it from those of the same colour. */
  Color series(int index) {
    List<Color> series = this == LIGHT ? ON_LIGHT : ON_DARK;
    return series.get((index + index / Marks.UNIT_SHAPES) % series.size());
  }

  /** The colour of a kind of trial; its shape tells it too. */
  Color of(TrialPoint.Kind kind) {
    return switch (kind) {
      case PASSED, NO_INTERRUPTION -> series(0);
      case FAILED, NO_RETURN -> series(1);
      case INCONCLUSIVE -> series(3);
      case NOT_JUDGED -> text;
      case REFUSED -> quiet;
    };
  }
}
