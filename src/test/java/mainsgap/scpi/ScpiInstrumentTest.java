package mainsgap.scpi;

import static mainsgap.Sentences.assertSays;
import static mainsgap.link.LoopbackPeer.ascii;
import static mainsgap.link.LoopbackPeer.bytes;
import static mainsgap.link.LoopbackPeer.bytesThenClose;
import static mainsgap.link.LoopbackPeer.oneByOne;
import static mainsgap.link.LoopbackPeer.silence;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import mainsgap.link.LinkClosedException;
import mainsgap.link.LoopbackPeer;
import mainsgap.link.ResourceName;
import mainsgap.waiting.Clock;
import mainsgap.waiting.ManualClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScpiInstrumentTest {
  private static final ScpiOptions QUICK =
      ScpiOptions.standard().withReplyTimeout(Duration.ofMillis(150));

  private LoopbackPeer peer;
  private ScpiInstrument instrument;

  @BeforeEach
  void connect() throws IOException {
    peer = new LoopbackPeer().answer(":SYST:ERR?", "0,\"No error\"");
    instrument = ScpiInstrument.open(ResourceName.parse(peer.resource()), QUICK, Clock.system());
  }

  @AfterEach
  void close() throws IOException {
    instrument.close();
    peer.close();
  }

  @Test
  void aLineMayEndWithNlOrCrNl() {
    peer.answer("A?", "one").answer("B?", bytes(ascii("two\r\n")));
    assertEquals("one", instrument.query("A?"));
    assertEquals("two", instrument.query("B?"));
  }

  @Test
  void aLineMayComeByteByByte() {
    peer.answer("A?", oneByOne(ascii("slow but whole\r\n")));
    assertEquals("slow but whole", instrument.query("A?"));
  }

  @Test
  void whatAReplyLeftOverIsNotTakenForTheNext() {
    peer.answer("A?", "one\nleft over").answer("B?", "two");
    assertEquals("one", instrument.query("A?"));
    assertEquals("two", instrument.query("B?"));
  }

  @Test
  void numbersAreRead() {
    peer.answer("N?", "+2.5E-3").answer("L?", "1,9.91E37, -3");
    assertEquals(0.0025, instrument.queryNumber("N?"));
    assertArrayEquals(new double[] {1, Double.NaN, -3}, instrument.queryNumbers("L?"));
  }

  @Test
  void textForANumberNamesQueryAndReply() {
    peer.answer("N?", "1,two,3");
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.queryNumbers("N?"));
    assertEquals(
        instrument.resource()
            + " answered '1,two,3' to 'N?' where a number should be;"
            + " check that the profile fits the instrument",
        e.getMessage());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Invented Works,Scope 4,123,1.0 | Invented Works | Scope 4 | 123 | 1.0",
        "Invented Works, Scope 4,,1.0,b | Invented Works | Scope 4 | 0 | 1.0,b",
        "Scope 4 | Scope 4 | unknown | 0 | unknown",
        "'' | unknown | unknown | 0 | unknown",
      })
  void anIdentityMayLackFields(
      String reply, String manufacturer, String model, String serial, String firmware) {
    peer.answer("*IDN?", reply);
    assertEquals(new Identity(manufacturer, model, serial, firmware), instrument.identity());
  }

  @Test
  void aLinkClosedInMidBlockSaysHowFarItCame() {
    peer.answer("D?", bytesThenClose(ascii("#210ABCD")));
    LinkClosedException e =
        assertThrows(LinkClosedException.class, () -> instrument.queryBlock("D?", 10));
    assertSays(e, "the reply to 'D?' broke off after 4 of 10 bytes of data: ");
  }

  @Test
  void clearedStatusHasNothingToComplainOf() {
    instrument.clearStatus();
    instrument.checkErrors();
    assertEquals(List.of("*CLS", ":SYST:ERR?"), peer.received());
  }

  @Test
  void aComplaintNamesNumberCommandAndRemedy() throws IOException {
    peerWithErrors("-222,\"Data out of range\"", "0,\"No error\"");
    instrument.command(":CHAN1:SCAL 1E9");
    InstrumentComplaint e = assertThrows(InstrumentComplaint.class, instrument::checkErrors);
    assertEquals(
        instrument.resource()
            + " reports error -222 \"Data out of range\" after ':CHAN1:SCAL 1E9':"
            + " the value is outside what it can do; choose one within its limits",
        e.getMessage());
    assertEquals(List.of(new InstrumentError(-222, "Data out of range")), e.errors());
    instrument.checkErrors();
  }

  @Test
  void aComplaintNamesEveryMessageSinceTheLastCheck() throws IOException {
    peerWithErrors("0,\"\"", "-113,\"Undefined header\"", "-221,\"Settings conflict\"", "0,\"\"");
    instrument.command(":A 1");
    instrument.checkErrors();
    instrument.command(":B 1");
    instrument.command(":C 1");
    InstrumentComplaint e = assertThrows(InstrumentComplaint.class, instrument::checkErrors);
    assertSays(
        e,
        "error -113 \"Undefined header\", -221 \"Settings conflict\""
            + " after one of ':B 1', ':C 1': ");
  }

  @Test
  void manyMessagesAreNamedByFirstAndLast() throws IOException {
    peerWithErrors("-100,\"Command error\"", "0,\"\"");
    for (int i = 1; i <= 20; i++) {
      instrument.command(":SET " + i);
    }
    InstrumentComplaint e = assertThrows(InstrumentComplaint.class, instrument::checkErrors);
    assertSays(e, "after one of 16 messages from ':SET 5' to ':SET 20': ");
  }

  @Test
  void anErrorReadBeforeTheQueueFellSilentIsToldAtTheNextCheck() throws IOException {
    peer.close();
    instrument.close();
    peer =
        new LoopbackPeer()
            .answer(":SYST:ERR?", "-222,\"Data out of range\"")
            .answer(":SYST:ERR?", silence())
            .answer(":SYST:ERR?", "0,\"No error\"");
    instrument = ScpiInstrument.open(ResourceName.parse(peer.resource()), QUICK, Clock.system());
    instrument.command(":SET 1");
    assertThrows(ReplyTimeoutException.class, instrument::checkErrors);
    InstrumentComplaint e = assertThrows(InstrumentComplaint.class, instrument::checkErrors);
    assertSays(e, "error -222 \"Data out of range\" after ':SET 1'");
  }

  @Test
  void eventsInTheQueueAreNoComplaint() throws IOException {
    peerWithErrors("-500,\"Power on\"", "-800,\"Operation complete\"", "0,\"\"");
    instrument.checkErrors();
  }

  @Test
  void anErrorQueueThatNeverEndsIsLeftAfter32() throws IOException {
    peerWithErrors("-100,\"Command error\"");
    assertEquals(32, instrument.drainErrors().size());
  }

  @Test
  void textInTheErrorQueueIsRefused() throws IOException {
    peerWithErrors("all is well");
    ScpiException e = assertThrows(ScpiException.class, instrument::checkErrors);
    assertEquals(
        instrument.resource()
            + ", asked ':SYST:ERR?', gave no usable reply:"
            + " it says 'all is well' where an error's number and text should be",
        e.getMessage());
  }

  @Test
  void anUnknownQueryMetWithSilenceBecomesItsComplaint() throws IOException {
    peerWithErrors("-113,\"Undefined header;FOO:BAR?\"", "0,\"No error\"");
    InstrumentComplaint e =
        assertThrows(InstrumentComplaint.class, () -> instrument.query("FOO:BAR?"));
    assertEquals(
        instrument.resource()
            + " reports error -113 \"Undefined header;FOO:BAR?\" after 'FOO:BAR?': the instrument"
            + " does not know this command; choose a profile that fits this model",
        e.getMessage());
  }

  @Test
  void aSilentInstrumentIsNamedAndCanBeAskedAgain() {
    peer.answer("A?", silence()).answer("A?", "awake");
    ReplyTimeoutException e =
        assertThrows(ReplyTimeoutException.class, () -> instrument.query("A?"));
    assertEquals(
        instrument.resource()
            + " gave no whole reply to 'A?' within 150 ms (before any byte): it may be busy, or not"
            + " know the command; check the profile or allow more time",
        e.getMessage());
    assertEquals("awake", instrument.query("A?"));
  }

  @Test
  void anInstrumentThatIsSilentEvenToItsErrorQueueEndsToo() throws IOException {
    peer.close();
    peer = new LoopbackPeer();
    instrument = ScpiInstrument.open(ResourceName.parse(peer.resource()), QUICK, Clock.system());
    assertThrows(ReplyTimeoutException.class, () -> instrument.query("A?"));
    assertThrows(ReplyTimeoutException.class, instrument::checkErrors);
  }

  @Test
  void aLineWithoutEndIsRefused() throws IOException {
    instrument.close();
    ScpiOptions shortLines =
        new ScpiOptions(QUICK.connectTimeout(), QUICK.replyTimeout(), QUICK.commandGap(), "\n", 10);
    instrument =
        ScpiInstrument.open(ResourceName.parse(peer.resource()), shortLines, Clock.system());
    peer.answer("A?", "0123456789").answer("B?", "0123456789A").answer("C?", "well");
    assertEquals("0123456789", instrument.query("A?"));
    ScpiException e = assertThrows(ScpiException.class, () -> instrument.query("B?"));
    assertSays(e, "a line longer than 10 bytes");
    assertEquals("well", instrument.query("C?"));
  }

  @Test
  void aLinkClosedInMidReplySaysHowFarItCame() {
    peer.answer("A?", bytesThenClose(ascii("half")));
    LinkClosedException e = assertThrows(LinkClosedException.class, () -> instrument.query("A?"));
    assertSays(e, "the reply to 'A?' broke off after 4 bytes: ");
  }

  @Test
  void messagesKeepTheGapThatTheInstrumentNeeds() {
    instrument.close();
    ManualClock clock = new ManualClock();
    ScpiOptions resting = QUICK.withCommandGap(Duration.ofMillis(300));
    instrument = ScpiInstrument.open(ResourceName.parse(peer.resource()), resting, clock);
    instrument.command("A");
    assertEquals(0, clock.nanoTime());
    instrument.command("B");
    clock.advance(Duration.ofMillis(100));
    instrument.command("C");
    assertEquals(Duration.ofMillis(600).toNanos(), clock.nanoTime());
  }

  @Test
  void aMessageEndsAsTheInstrumentWants() {
    instrument.close();
    ScpiOptions carriageReturn =
        new ScpiOptions(
            QUICK.connectTimeout(), QUICK.replyTimeout(), QUICK.commandGap(), "\r\n", 100);
    instrument =
        ScpiInstrument.open(ResourceName.parse(peer.resource()), carriageReturn, Clock.system());
    peer.answer("A?\r", "one");
    assertEquals("one", instrument.query("A?"));
  }

  @Test
  void aMessageIsOneLineOfAscii() {
    assertThrows(IllegalArgumentException.class, () -> instrument.command("A\nB"));
    assertThrows(IllegalArgumentException.class, () -> instrument.query("é?"));
  }

  private void peerWithErrors(String... queue) throws IOException {
    instrument.close();
    peer.close();
    peer = new LoopbackPeer();
    for (String entry : queue) {
      peer.answer(":SYST:ERR?", entry);
    }
    instrument = ScpiInstrument.open(ResourceName.parse(peer.resource()), QUICK, Clock.system());
  }
}
