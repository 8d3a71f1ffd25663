package mainsgap.desk.pictures;

import java.util.List;
import mainsgap.bench.TrialReport;

/**
 * Where on the wave the loss of a trial fell.
 *
 * @param number of the trial
 * @param mark how it stands
 * @param shape how it is drawn
 * @param angleDegrees 0 to 360, 0 being the zero crossing upwards
 */
record WavePoint(int number, TrialMark mark, MarkShape shape, double angleDegrees) {

  /** Those that have an angle, in the order of their numbers: the last one is the latest. */
  static List<WavePoint> of(List<TrialReport> trials) {
    return trials.stream()
        .filter(trial -> MillisWords.angleDegrees(trial.outcome()).isPresent())
        .map(
            trial ->
                new WavePoint(
                    trial.number(),
                    TrialMark.of(trial),
                    MarkShape.of(trial),
                    MillisWords.angleDegrees(trial.outcome()).getAsDouble()))
        .sorted(java.util.Comparator.comparingInt(WavePoint::number))
        .toList();
  }
}
