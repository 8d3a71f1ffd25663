package mainsgap.desk.trace;

import mainsgap.signal.VoltExtent;

/**
 * Where times and volts lie on the pixels of a plot.
 *
 * @param widthPixels of the plot
 * @param heightPixels of the plot
 * @param topPixels above the volts: room for the bracket and the ruler
 * @param view the times at its left and right edges
 * @param volts the volts at the lower edge and at {@code topPixels}
 */
record PlotFrame(
    int widthPixels, int heightPixels, int topPixels, TimeSpan view, VoltExtent volts) {

  /** Free above and below the traces, as a share of their extent. */
  private static final double MARGIN = 0.06;

  /** A plot that shows {@code shown} with some room about it; a flat line lies in the middle. */
  static VoltExtent roomy(VoltExtent shown) {
    if (shown.isNone()) {
      return new VoltExtent(-1, 1);
    }
    double middle = (shown.lowestVolts() + shown.highestVolts()) / 2;
    double half = (shown.highestVolts() - shown.lowestVolts()) / 2 * (1 + 2 * MARGIN);
    if (half <= Math.abs(middle) * 1e-9) {
      half = Math.max(1, Math.abs(middle) * 0.1);
    }
    return new VoltExtent(middle - half, middle + half);
  }

  double xOf(double seconds) {
    return (seconds - view.fromSeconds()) / view.lengthSeconds() * widthPixels;
  }

  double secondsAt(double x) {
    return view.fromSeconds() + x / widthPixels * view.lengthSeconds();
  }

  double secondsPerPixel() {
    return view.lengthSeconds() / widthPixels;
  }

  double yOf(double atVolts) {
    return topPixels
        + (volts.highestVolts() - atVolts)
            / (volts.highestVolts() - volts.lowestVolts())
            * (heightPixels - topPixels);
  }

  double voltsAt(double y) {
    return volts.highestVolts()
        - (y - topPixels)
            / (heightPixels - topPixels)
            * (volts.highestVolts() - volts.lowestVolts());
  }
}
