package mainsgap.arming;

import java.util.List;

/**
 * How an AC source is told to switch its output.
 *
 * @param open switches it off
 * @param close switches it on
 * @param position asks whether it is on: answered by 0, 1, OFF or ON
 * @param openAtAngle switch it off at an angle of its output, {@value #ANGLE} standing for the
 *     degrees; empty where the source cannot
 */
public record ScpiOutputCommands(
    String open, String close, String position, List<String> openAtAngle) {
  /** Stands for the angle in degrees. */
  public static final String ANGLE = "{angle}";

  /**
   * SCPI-1999 Vol. 2, 15 (OUTPut subsystem): what every source with an output relay should know.
   */
  public static final ScpiOutputCommands STANDARD =
      new ScpiOutputCommands(":OUTP:STAT OFF", ":OUTP:STAT ON", ":OUTP:STAT?", List.of());

  /** Takes its own copy. */
  public ScpiOutputCommands {
    openAtAngle = List.copyOf(openAtAngle);
    if (!openAtAngle.isEmpty() && openAtAngle.stream().noneMatch(text -> text.contains(ANGLE))) {
      throw new IllegalArgumentException("no command of an opening at an angle holds " + ANGLE);
    }
  }
}
