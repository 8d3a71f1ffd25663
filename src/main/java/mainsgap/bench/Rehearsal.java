package mainsgap.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import mainsgap.arming.ClosedBy;
import mainsgap.signal.Event;
import org.jspecify.annotations.Nullable;

/** A series told before it is run: what would be done, in the order in which it would be done. */
final class Rehearsal {
  private final SeriesSetup setup;
  private final boolean isLoss;

  private Rehearsal(SeriesSetup setup) {
    this.setup = setup;
    this.isLoss = setup.task().event() == Event.LOSS;
  }

  /** The steps, one sentence each. */
  static List<String> of(SeriesSetup setup) {
    return new Rehearsal(setup).steps();
  }

  private List<String> steps() {
    List<String> steps = new ArrayList<>();
    steps.add(
        setup.request().trials()
            + (setup.request().trials() == 1 ? " trial of a " : " trials of a ")
            + setup.task().event().word()
            + ", unit '"
            + setup.unit()
            + "', "
            + Words.plain(setup.task().nominalVolts())
            + " V "
            + Words.plain(setup.task().nominalFrequencyHertz())
            + " Hz.");
    RigSwitch commanded = setup.mainsSwitch();
    steps.add(
        "The mains switch: "
            + (commanded == null
                ? "by hand, when the prompt asks for it."
                : commanded.words() + "; " + SwitchTimingWords.of(setup.timing()) + "."));
    steps.add(
        "First the live signal is looked at"
            + (commanded == null
                ? ""
                : "; where mains is off it is closed for that, " + closing(commanded))
            + (isLoss ? "." : ", then mains is opened: the unit goes over to its battery."));
    steps.add(
        "Each trial: the instrument is armed; mains is "
            + (isLoss ? "opened" : "closed")
            + who(commanded, isLoss)
            + "; the trigger is waited for, at most "
            + words(setup.pace().triggerWait())
            + (isLoss ? "" : ", as the unit may check the mains for minutes")
            + "; the capture is read, measured and logged.");
    steps.add(
        "Between two trials: mains is "
            + (isLoss ? "closed" : "opened")
            + " again"
            + who(commanded, !isLoss)
            + ", the unit settles for "
            + words(setup.pace().settle())
            + pause()
            + ".");
    steps.add(
        "At most "
            + setup.pace().maxRepeats()
            + " attempts that give no measurement are repeated.");
    steps.add(
        commanded == null
            ? "At the end mains stays as the hand left it."
            : "At the end, also at a stop or a fault, the program opens the mains switch; the unit's"
                + " output is still live from its battery.");
    Duration rest = setup.pace().settle().plus(setup.pace().pause());
    steps.add(
        "Settling and pauses alone take "
            + words(rest.multipliedBy(setup.request().trials() - 1))
            + ".");
    return steps;
  }

  private String pause() {
    Duration pause = setup.pace().pause();
    return pause.isZero() ? "" : ", and mains stays on for another " + words(pause);
  }

  private static String who(@Nullable RigSwitch commanded, boolean opens) {
    if (commanded == null) {
      return " by hand";
    }
    return opens ? " by the program" : " " + closing(commanded);
  }

  private static String closing(RigSwitch commanded) {
    return commanded.closedBy() == ClosedBy.PROGRAM
        ? "by the program itself"
        : "by the program, on the fresh word of a person";
  }

  private static String words(Duration duration) {
    return Words.plain(duration.toMillis() / 1e3) + " s";
  }
}
