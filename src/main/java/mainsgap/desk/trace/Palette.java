package mainsgap.desk.trace;

import java.util.List;

/**
 * The colours of a picture, each 0xAARRGGBB. Traces and curves differ in luminance and are marked
 * and broken in different ways too, so that none is told by its colour alone.
 *
 * @param ground behind all
 * @param grid lines at the ticks
 * @param axis lines at 0
 * @param type brackets and what stands out
 * @param gap the shade of the gap
 * @param ruler the declared time
 * @param traces in turn; the first of a scene has the first
 * @param curves in turn
 */
record Palette(
    int ground,
    int grid,
    int axis,
    int type,
    int gap,
    int ruler,
    List<Integer> traces,
    List<Integer> curves) {

  /**
   * On a light ground: five hues of the palette of Okabe and Ito, which colour-blind eyes tell
   * apart (from memory), darkened where they are too pale for a thin line.
   */
  private static final List<Integer> TRACES_ON_LIGHT =
      List.of(0xFF0060A0, 0xFFC04A00, 0xFF1A1A1A, 0xFF00805C, 0xFFB3588A, 0xFF8A6A00);

  private static final List<Integer> CURVES_ON_LIGHT = List.of(0xFF9A5B00, 0xFF6B3FA0, 0xFF00805C);

  /** On a dark ground: the same hues, lighter. */
  private static final List<Integer> TRACES_ON_DARK =
      List.of(0xFF6CC4F5, 0xFFFF9D4D, 0xFFF2F2F2, 0xFF2FCFA0, 0xFFE79AC6, 0xFFF0E442);

  private static final List<Integer> CURVES_ON_DARK = List.of(0xFFE0A33C, 0xFFC7A2FF, 0xFF2FCFA0);

  /** Copies the lists. */
  Palette {
    traces = List.copyOf(traces);
    curves = List.copyOf(curves);
  }

  /** The colours of lines are chosen by how light the ground is. */
  static Palette on(int ground, int grid, int axis, int type, int gap, int ruler) {
    boolean light = luminance(ground) > 0.5;
    return new Palette(
        ground,
        grid,
        axis,
        type,
        gap,
        ruler,
        light ? TRACES_ON_LIGHT : TRACES_ON_DARK,
        light ? CURVES_ON_LIGHT : CURVES_ON_DARK);
  }

  int trace(int number) {
    return traces.get(number % traces.size());
  }

  int curve(int number) {
    return curves.get(number % curves.size());
  }

  /** Relative luminance of WCAG 2.2, from 0 to 1. */
  static double luminance(int argb) {
    return 0.2126 * linear(argb >> 16 & 0xFF)
        + 0.7152 * linear(argb >> 8 & 0xFF)
        + 0.0722 * linear(argb & 0xFF);
  }

  private static double linear(int level) {
    double share = level / 255.0;
    return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
