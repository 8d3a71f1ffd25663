package mainsgap.transfer.outcome;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What is told beside a time, and what is not worth it. */
class OutcomeNotesTest {

  @Test
  void timeThatTellsAllHasNothingBesideIt() {
    assertEquals(List.of(), OutcomeNotes.of(Outcomes.gap(8, 0.01)));
    assertEquals(List.of(), OutcomeNotes.of(Outcomes.noReturn(20, 0.1, 0)));
    assertEquals(List.of(), OutcomeNotes.of(new Refused("clipped")));
  }

  @Test
  void usableTimeFurtherBreaksAndBounceStandBesideATime() {
    Outcome outcome =
        new Outcomes.Gap(8, 0.01)
            .usableAfter(41)
            .with(new FurtherInterruptions(2, 6.5, 0.02))
            .bouncing(0.6)
            .outcome();
    assertEquals(
        List.of(
            "usable after 41.000 ms",
            "2 further interruptions after the return, the longest of 6.500 ms ± 0.020 ms",
            "the mains switch bounced: it opened for good 0.600 ms later"),
        OutcomeNotes.of(outcome));
  }

  @Test
  void aReturnInARestIsTold() {
    UncertaintyBudget rest =
        new UncertaintyBudget(
            List.of(new UncertaintyBudget.Component("return: " + UncertaintyBudget.IN_REST, 0.6)),
            2);
    assertEquals(
        List.of(
            "the return lies in a rest of the output's own waveform, which shows no instant: it is"
                + " taken in the middle, with the rest as its uncertainty"),
        OutcomeNotes.of(new Outcomes.Gap(8, 0.01).of(rest).outcome()));
  }

  @Test
  void otherChannelsAreToldInWords() {
    Measured gap = Outcomes.gap(8, 0.01);
    OtherChannels others =
        new OtherChannels(
            6.0,
            OtherChannels.SecondLeg.of(new Refused("clipped")),
            3.0,
            gap.lossSeconds() + 0.003);
    assertEquals(
        List.of(
            "the unit held the load for 6.000 ms after mains was lost",
            "second leg: not measured: clipped",
            "load current at the end 3 % of that before: the load tripped, or starts again later",
            "marker changed 3.000 ms after the event"),
        OutcomeNotes.of(gap.with(others, gap.lossSeconds())));
  }

  @Test
  void noInterruptionIsToldWithItsProof() {
    assertEquals(
        List.of("proof that mains was lost: the phase steps by 20°"),
        OutcomeNotes.of(Outcomes.noInterruption(0.25)));
  }
}
