package mainsgap.bench;

import java.util.List;
import java.util.stream.Stream;
import mainsgap.settings.SettingsException;

/**
 * What a person must have read before a real instrument is armed. Sources: UK HSE GS38, IEC
 * 61010-1, -031 and -2-030, OSHA 29 CFR 1910.333, and common practice.
 */
public final class Cautions {
  private Cautions() {}

  /** The cautions for what {@code request} is about to do, one each, in the order of the work. */
  public static List<String> of(SeriesRequest request) {
    return of(isSwitchCommanded(request));
  }

  /** The cautions for a rig whose mains switch the program moves, or else a hand. */
  public static List<String> of(boolean switchIsCommanded) {
    return switchIsCommanded
        ? Stream.concat(list().stream(), ofCommandedSwitch().stream()).toList()
        : list();
  }

  /** What has to be in place before a program may move a mains switch; common practice. */
  static List<String> ofCommandedSwitch() {
    return List.of(
        "This rig lets the program switch mains. It does so without warning while the instrument is"
            + " armed: keep hands off from the first prompt to the last.",
        "Have a hardware emergency stop within reach that takes mains off without this program, the"
            + " computer or the link. Try it before the first trial.",
        "The switch must open by itself when the link or the computer dies: a normally-open contactor"
            + " whose coil drops, a relay that falls back. A program that hangs opens nothing.",
        "A relay board never carries mains: it drives the coil of a rated, enclosed two-pole"
            + " contactor. An electronic switch leaks and may fail closed: back it with a two-pole"
            + " isolator.",
        "An open switch does not make the rig dead: the unit feeds its output from the battery, and"
            + " a source's terminals are to be proved dead.");
  }

  private static boolean isSwitchCommanded(SeriesRequest request) {
    if (request.rigFile() == null) {
      return false;
    }
    try {
      return RigFile.read(request.rigFile(), request.nominalVolts(), SeriesRequest.DEFAULT_VOLTS)
              .mainsSwitch()
          != null;
    } catch (SettingsException e) {
      // Whoever opens the series says what is wrong with the file; until then, say more.
      return true;
    }
  }

  /** The cautions of every mains rig. */
  public static List<String> list() {
    return List.of(
        "120/230 V kills. Only people trained for work at this voltage do it, by the rules of their"
            + " workplace and the local codes; those come before anything that this program says.",
        "Connect and disconnect with everything off: the wall plug out AND the unit's inverter"
            + " stopped and discharged. The unit's output is live with the wall plug out, and its"
            + " capacitors stay charged.",
        "Prove dead with a voltage tester that was proved on a known source before and after.",
        "The probe's ground clip and the shell of the connector are protective earth, and all"
            + " channels share it. A clip on a live conductor shorts mains through the probe.",
        "Never float the oscilloscope: no cut earth pin, no isolation transformer. Measure line to"
            + " neutral with a differential probe for each channel, rated for the place (CAT II at"
            + " an outlet, CAT III in the installation) and for the voltage.",
        "The rating of the whole is that of its weakest part: input, probe, tip, adapter. An input"
            + " with no CAT rating must see mains only through a probe that has one.",
        "The output's neutral may float, may be split, and its bond to earth may change at the very"
            + " moment of transfer. Never bond it to earth and never feed it into the building.",
        "Neither an RCD nor a GFCI protects from a touch between line and neutral, and behind an"
            + " isolated output they may not trip at all.",
        "Break mains with a rated two-pole switch and keep protective earth connected: do not pull"
            + " a plug or a loose wire.",
        "Fix the clips before power is on, keep hands off while it is, use one hand, dry, without"
            + " jewellery, with eye protection and a second person near.",
        "Use a load that is rated for the voltage and power, and ventilated.",
        "This program is no safety device. Have a switch within reach that takes everything off,"
            + " and remember that the unit goes on feeding its output from the battery.");
  }
}
