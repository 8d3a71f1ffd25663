package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import mainsgap.waiting.StopRequest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProfileChoiceTest {
  private final List<ProbeStep> heard = new ArrayList<>();
  private LoopbackPeer peer;
  private Path folder;

  @BeforeEach
  void open(@TempDir Path temporary) throws IOException {
    folder = temporary;
    peer =
        new LoopbackPeer()
            .answer("*IDN?", "Invented Bench,Scope 4,1,1.0")
            .answer(":SYST:ERR?", "0,\"No error\"");
    copy("general", "");
  }

  @AfterEach
  void end() throws IOException {
    peer.close();
  }

  @Test
  void theNameOfAnInstrumentComesBeforeProbing() throws IOException {
    copy("named", "idn-pattern = \"^invented bench,scope [0-9]\"");
    answerProbes();
    assertEquals("named", choose().name());
  }

  @Test
  void anInstrumentWithoutAProfileOfItsNameIsProbed() throws IOException {
    copy("other", "idn-pattern = \"another bench\"");
    answerProbes();
    assertEquals("general", choose().name());
  }

  @Test
  void severalThatFitAreNamed() throws IOException {
    copy("second", "");
    answerProbes();
    assertEquals(
        "several instrument profiles fit Invented Bench Scope 4, serial 1, firmware 1.0: choose one"
            + " of general, second",
        refusal());
  }

  @Test
  void silenceOnEveryProbeFitsNone() {
    assertEquals(
        "no instrument profile fits Invented Bench Scope 4, serial 1, firmware 1.0: choose one of"
            + " general, or write one from its programming manual",
        refusal());
  }

  @Test
  void anAnswerOfAnotherFormFitsNone() {
    peer.answer(":TRIG:STAT?", "ARMED").answer(":ACQ:MDEP?", "1000");
    assertEquals(0, refusal().indexOf("no instrument profile fits"));
  }

  @Test
  void anEmptyFolderIsTold(@TempDir Path empty) {
    assertEquals(
        "the folder " + empty + " has no instrument profile: put a .toml file into it",
        assertThrows(ScopeException.class, () -> InstrumentProfiles.load(empty)).getMessage());
  }

  @Test
  void theReportSaysWhatEachQuestionGaveAndWhyAProfileDoesNotFit() throws IOException {
    copy("other", "idn-pattern = \"another bench\"");
    peer.answer(":TRIG:STAT?", "STOP").answer(":ACQ:MDEP?", "AUTO");
    ProbeReport report = probe(InstrumentProfiles.load(folder));
    assertEquals(List.of(), report.fitting());
    assertEquals(
        List.of(
            "other DOES_NOT_FIT the answer to *IDN? is not of its pattern 'another bench'",
            "general DOES_NOT_FIT the answer to :ACQ:MDEP? is not of the form that it asks for"),
        report.profiles().stream()
            .map(probed -> probed.profile() + " " + probed.fit() + " " + probed.reason())
            .toList());
    ProbeStep last = report.profiles().get(1).steps().get(1);
    assertEquals("AUTO", last.text());
    assertEquals("[-+0-9.eE]+", last.wanted());
  }

  @Test
  void profilesWithoutANameAreNotAskedForOnceANamedOneFits() throws IOException {
    copy("named", "idn-pattern = \"invented\"");
    answerProbes();
    ProbeReport report = probe(InstrumentProfiles.load(folder));
    assertEquals(Optional.of("named"), report.chosen());
    assertEquals(ProbedProfile.Fit.NOT_ASKED, report.profiles().get(1).fit());
  }

  @Test
  void aQuestionThatSeveralProfilesShareIsAskedOnce() throws IOException {
    copy("second", "");
    answerProbes();
    assertEquals(List.of("general", "second"), probe(InstrumentProfiles.load(folder)).fitting());
    assertEquals(List.of(":TRIG:STAT?", ":ACQ:MDEP?"), questions());
    assertEquals(1, peer.received().stream().filter(line -> line.equals(":TRIG:STAT?")).count());
  }

  @Test
  void whatTheErrorQueueSaysToAnUnknownQuestionIsInTheReport() {
    peer = queueing(peer);
    ProbeStep step = probe(InstrumentProfiles.load(folder)).profiles().get(0).steps().get(0);
    assertEquals(ProbeStep.Answer.SILENT, step.answer());
    assertEquals(List.of("-113 \"Undefined header\""), step.errors());
  }

  @Test
  void anInstrumentThatIsSilentOnAllButItsNameHangsNothing() throws IOException {
    peer.close();
    peer = new LoopbackPeer().answer("*IDN?", "Invented Bench,Scope 4,1,1.0");
    ProbeReport report = probe(InstrumentProfiles.load(folder));
    assertEquals("no answer came to :TRIG:STAT?", report.profiles().get(0).reason());
  }

  @Test
  void anInstrumentWithoutAnErrorQueueCanFit() throws IOException {
    peer.close();
    peer = new LoopbackPeer().answer("*IDN?", "Invented Bench,Scope 4,1,1.0");
    answerProbes();
    ProbeReport report = probe(InstrumentProfiles.load(folder));
    assertEquals(Optional.of("general"), report.chosen());
    assertFalse(report.profiles().get(0).steps().get(0).queueAnswered());
    assertEquals(1, peer.received().stream().filter(line -> line.equals(":SYST:ERR?")).count());
  }

  @Test
  void anInstrumentThatBreaksOffAtAnUnknownQuestionIsConnectedAgain() {
    peer.answer(":TRIG:STAT?", LoopbackPeer.bytesThenClose(new byte[0]));
    ProbeReport report = probe(InstrumentProfiles.load(folder));
    assertEquals("the instrument broke off at :TRIG:STAT?", report.profiles().get(0).reason());
  }

  private List<String> questions() {
    return heard.stream().map(ProbeStep::query).toList();
  }

  private static LoopbackPeer queueing(LoopbackPeer peer) {
    try {
      peer.close();
      return new LoopbackPeer()
          .answer("*IDN?", "Invented Bench,Scope 4,1,1.0")
          .answer(":SYST:ERR?", "-113,\"Undefined header\"")
          .answer(":SYST:ERR?", "0,\"No error\"");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void answerProbes() {
    peer.answer(":TRIG:STAT?", "STOP").answer(":ACQ:MDEP?", "1.0E3");
  }

  private String refusal() {
    return String.valueOf(assertThrows(ScopeException.class, this::choose).getMessage());
  }

  private InstrumentProfile choose() {
    InstrumentProfiles profiles = InstrumentProfiles.load(folder);
    return ProfileChoice.choose(probe(profiles), profiles);
  }

  private ProbeReport probe(InstrumentProfiles profiles) {
    ScpiOptions options = ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(200));
    try (ScpiInstrument instrument =
        ScpiInstrument.open(ResourceName.parse(peer.resource()), options, Clock.system())) {
      return new ProfileProbe(profiles, instrument, new StopRequest(), heard::add).run();
    }
  }

  private void copy(String name, String identification) throws IOException {
    String text =
        Files.readString(ShippedProfilesTest.FOLDER.resolve("ten-field-preamble.toml"))
            .replace("[identification]", "[identification]\n" + identification);
    Files.writeString(folder.resolve(name + ".toml"), text);
  }
}
