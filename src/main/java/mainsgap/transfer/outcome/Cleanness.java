package mainsgap.transfer.outcome;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How cleanly the voltage comes back, beside the steps that {@link Supplies} tell; a number is null
 * where the capture cannot tell it. What each means is told in src/docs/method.md.
 *
 * @param peakOvershootPercent above nominal peak, from the first return to the end of the settled
 *     supply's fit; 0 where the voltage stays below
 * @param clippedAfterReturn whether samples there lie on a rail: overshoot, rate of change and
 *     residuals are then 'at least'
 * @param peakUndershootPercent how far the lowest of the first four whole half waves after the
 *     return stays below nominal peak; 0 where all reach it
 * @param thdBefore the distortion of the supply before
 * @param thdAfter the distortion of the settled supply
 * @param dcOffsetPercent the mean of the settled supply in per cent of nominal RMS voltage, the
 *     instrument's own offset in it
 * @param crestFactor the settled supply's peak by its RMS voltage
 * @param settledDeviationPercent the settled supply's RMS voltage minus nominal, in per cent of
 *     nominal
 * @param settlingMillis from the return to the instant after which the voltage stays within 10 % of
 *     nominal peak of the settled supply
 * @param settlingTo3PercentMillis the same within 3 %
 * @param restrikes how often the voltage of the supply before comes back between loss and return
 *     after a quarter of a cycle or more without it
 * @param steepestVoltsPerMicrosecond the largest rate of change from the first return to a cycle
 *     after the return; limited by the sample interval
 * @param residual the disturbance that is left beside the settled supply
 */
public record Cleanness(
    double peakOvershootPercent,
    boolean clippedAfterReturn,
    @Nullable Double peakUndershootPercent,
    @Nullable Distortion thdBefore,
    @Nullable Distortion thdAfter,
    @Nullable Double dcOffsetPercent,
    @Nullable Double crestFactor,
    @Nullable Double settledDeviationPercent,
    @Nullable Double settlingMillis,
    @Nullable Double settlingTo3PercentMillis,
    int restrikes,
    double steepestVoltsPerMicrosecond,
    Residual residual) {

  /**
   * Total harmonic distortion, orders 2 to 40 or as far as the sample rate carries.
   *
   * @param percent of the fundamental
   * @param cycles of the window: by subgroups of IEC 61000-4-7 over 10 at 50 Hz and 12 at 60 Hz,
   *     else by the lines of so many cycles
   */
  public record Distortion(double percent, int cycles) {}

  /**
   * The RMS value of the voltage minus the settled supply's model, from the return on.
   *
   * @param oneCyclePercent over the first nominal cycle, in per cent of nominal
   * @param twoCyclesPercent over the first two
   * @param fiveCyclesPercent over the first five
   */
  public record Residual(
      @Nullable Double oneCyclePercent,
      @Nullable Double twoCyclesPercent,
      @Nullable Double fiveCyclesPercent) {}

  /** The figures that make it no clean one, by their names for people; empty where it is one. */
  public List<String> reasons() {
    return CleannessWord.reasons(this);
  }

  /** The word for people, to stand beside the numbers. */
  public CleannessWord word() {
    return CleannessWord.of(this);
  }
}
