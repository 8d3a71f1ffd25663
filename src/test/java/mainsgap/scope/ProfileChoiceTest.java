package mainsgap.scope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.ResourceName;
import mainsgap.scpi.ScpiInstrument;
import mainsgap.scpi.ScpiOptions;
import mainsgap.waiting.Clock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProfileChoiceTest {
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

  private void answerProbes() {
    peer.answer(":TRIG:STAT?", "STOP").answer(":ACQ:MDEP?", "1.0E3");
  }

  private String refusal() {
    return String.valueOf(assertThrows(ScopeException.class, this::choose).getMessage());
  }

  private InstrumentProfile choose() {
    ScpiOptions options = ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(200));
    try (ScpiInstrument instrument =
        ScpiInstrument.open(ResourceName.parse(peer.resource()), options, Clock.system())) {
      return new ProfileChoice(InstrumentProfiles.load(folder), instrument).choose();
    }
  }

  private void copy(String name, String identification) throws IOException {
    String text =
        Files.readString(ShippedProfilesTest.FOLDER.resolve("ten-field-preamble.toml"))
            .replace("[identification]", "[identification]\n" + identification);
    Files.writeString(folder.resolve(name + ".toml"), text);
  }
}
