package mainsgap.desk.trace;

/**
 * The ticks of a picture.
 *
 * @param millis along the time axis
 * @param volts along the vertical axis
 */
record Grid(Ticks millis, Ticks volts) {

  /** Ticks that leave room for their type: so many pixels apart at least. */
  static Grid of(PlotFrame frame, double pixelsAcross, double pixelsUp) {
    double voltsPerPixel =
        (frame.volts().highestVolts() - frame.volts().lowestVolts())
            / (frame.heightPixels() - frame.topPixels());
    return new Grid(
        Ticks.between(
            frame.view().fromSeconds() * 1e3,
            frame.view().toSeconds() * 1e3,
            frame.secondsPerPixel() * 1e3 * pixelsAcross),
        Ticks.between(
            frame.volts().lowestVolts(), frame.volts().highestVolts(), voltsPerPixel * pixelsUp));
  }
}
