package mainsgap.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import mainsgap.arming.LiveSignal;
import mainsgap.arming.MainsState;
import mainsgap.arming.RigComplaint;
import mainsgap.bench.RigCheckEnd.Kind;
import mainsgap.bench.RigCheckEnd.Seen;
import mainsgap.signal.ChannelRole;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigCheckTest {
  private static final InstrumentChoice STANDBY = new InstrumentChoice.Simulated("standby", 7);

  private final Requests requests;

  RigCheckTest(@TempDir Path folder) {
    requests = new Requests(folder);
  }

  @Test
  void rightRigShowsItsSignalsAndHowTheLossIsCaught() {
    List<String> progress = new ArrayList<>();

    RigCheckEnd end =
        RigCheck.run(
            requests.request(STANDBY, 1, CatchWish.AUTOMATIC, false, requests.rig(100)),
            progress::add,
            new StopRequest());

    assertEquals(Kind.RIGHT, end.kind(), end.sentence());
    Seen seen = seen(end);
    assertEquals(Set.of(ChannelRole.OUTPUT, ChannelRole.MAINS), seen.signals().keySet());
    LiveSignal output = signal(seen, ChannelRole.OUTPUT);
    assertEquals(230, output.rmsVolts(), 23);
    assertEquals(MainsState.PRESENT, seen.mains());
    assertEquals("time-out trigger", seen.method());
    assertEquals("none", seen.blindZone());
    assertFalse(seen.isBlind());
    assertTrue(seen.explanation().size() >= 4);
    assertTrue(seen.look().time().durationSeconds() < 1, "a look is a few cycles");
    assertEquals(3, progress.size());
    assertFalse(Files.exists(requests.file()), "a check logs nothing");
  }

  @Test
  void wrongProbeFactorIsToldInWords() {
    RigCheckEnd end = check(requests.rig(20));

    assertEquals(Kind.NOT_RIGHT, end.kind());
    assertTrue(end.sentence().contains("is the probe factor of 20 right?"), end.sentence());
    assertEquals(
        List.of(ChannelRole.OUTPUT), end.toMend().stream().map(RigComplaint::role).toList());
  }

  @Test
  void rigThatNamesNoLoadIsRemindedOfOne() throws Exception {
    Path rig = requests.rig(100);
    Files.writeString(
        rig, Files.readString(rig).replace("[load]\ndescription = \"60 W, resistive\"\n", ""));

    RigCheckEnd end = check(rig);

    assertEquals(Kind.RIGHT, end.kind());
    assertTrue(
        seen(end).complaints().stream()
            .anyMatch(
                one -> one.sentence().startsWith("this rig names no load: connect at least")));
  }

  @Test
  void blindZoneOfATriggerOnTheOutputIsTold() {
    RigCheckEnd end =
        RigCheck.run(
            requests.request(
                STANDBY,
                1,
                CatchWish.TIME_OUT_TRIGGER,
                false,
                requests.rigOfOutput("ten-field-preamble")),
            said -> {},
            new StopRequest());

    Seen seen = seen(end);
    assertTrue(seen.isBlind());
    assertTrue(seen.blindZone().startsWith("gaps under"), seen.blindZone());
    assertEquals(MainsState.UNKNOWN, seen.mains());
  }

  @Test
  void realInstrumentIsNotTouchedBeforeTheCautionsAreRead() {
    RigCheckEnd end =
        RigCheck.run(
            requests.request(
                new InstrumentChoice.Real("TCPIP::127.0.0.1::1::SOCKET"),
                1,
                CatchWish.AUTOMATIC,
                false,
                requests.rig(100)),
            said -> {},
            new StopRequest());

    assertEquals(Kind.WRONG_USE, end.kind());
    assertTrue(end.sentence().contains("before the cautions are read"), end.sentence());
    assertNull(end.seen());
  }

  /** Port 1 of this machine refuses: nobody listens there. */
  @Test
  void instrumentThatDoesNotAnswerIsAnEndNotAFault() {
    RigCheckEnd end =
        RigCheck.run(
            requests.real("TCPIP::127.0.0.1::1::SOCKET", 1, CatchWish.AUTOMATIC),
            said -> {},
            new StopRequest());

    assertEquals(Kind.INSTRUMENT_FAILED, end.kind());
    assertTrue(end.sentence().contains("127.0.0.1"), end.sentence());
  }

  @Test
  void stopIsHeeded() {
    StopRequest stop = new StopRequest();

    RigCheckEnd end =
        RigCheck.run(
            requests.simulated("standby", 1, CatchWish.AUTOMATIC), said -> stop.request(), stop);

    assertEquals(Kind.STOPPED, end.kind());
  }

  private RigCheckEnd check(Path rig) {
    return RigCheck.run(
        requests.request(STANDBY, 1, CatchWish.AUTOMATIC, false, rig),
        said -> {},
        new StopRequest());
  }

  private static Seen seen(RigCheckEnd end) {
    Seen seen = end.seen();
    assertNotNull(seen, end.sentence());
    return seen;
  }

  private static LiveSignal signal(Seen seen, ChannelRole role) {
    LiveSignal signal = seen.signals().get(role);
    assertNotNull(signal);
    return signal;
  }
}
