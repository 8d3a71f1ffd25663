package mainsgap.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import mainsgap.session.Session;
import mainsgap.session.SessionReader;
import mainsgap.transfer.claim.DeclaredClaim;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a rig file says of a series where the command line says nothing. */
class RunFromARigFileTest {
  private final Path session;
  private final Path rig;

  RunFromARigFileTest(@TempDir Path folder) throws IOException {
    session = folder.resolve("series.mainsgap");
    rig =
        Files.writeString(
            folder.resolve("rig.toml"),
            """
            [instrument]
            simulated = "standby"
            seed = 7

            [unit]
            name = "Invented Lumengrove 600"

            [claim]
            printed = "< 20 ms (typ.)"
            millis = 20
            relation = "<"
            kind = "maximum"

            [series]
            trials = 2
            catch = "record"

            [channels.output]
            number = 1
            probe-factor = 100
            category = "cat-iii"
            rated-volts = 600
            """);
  }

  @Test
  void instrumentClaimTrialsAndCatchingComeFromTheFile() {
    CommandRun run = CommandRun.of("run", "--rig=" + rig, "--session=" + session);

    assertEquals(0, run.exit(), run.err());
    Session kept = kept();
    assertEquals(2, kept.trials().size());
    assertEquals(
        new DeclaredClaim(
            "< 20 ms (typ.)",
            20,
            true,
            DeclaredClaim.Kind.MAXIMUM,
            "unknown",
            "unknown",
            "unknown"),
        kept.header().claim());
    assertEquals("forced record", kept.header().rig().get("catch method"));
    assertEquals("7", kept.header().conditions().get("seed"));
    assertEquals("Invented Lumengrove 600", kept.header().unit());
  }

  @Test
  void wordsOfTheCommandLineGoFirst() {
    CommandRun run =
        CommandRun.of(
            "run",
            "--rig=" + rig,
            "--session=" + session,
            "--trials=1",
            "--rated=40ms",
            "--catch=time-out",
            "--seed=8");

    assertEquals(0, run.exit(), run.err());
    Session kept = kept();
    assertEquals(1, kept.trials().size());
    assertEquals(DeclaredClaim.ofMillis(40, "40ms"), kept.header().claim());
    assertEquals("time out trigger", kept.header().rig().get("catch method"));
    assertEquals("8", kept.header().conditions().get("seed"));
  }

  @Test
  void realInstrumentOfTheFileAsksForTheCautionsToo() throws IOException {
    Files.writeString(
        rig,
        Files.readString(rig)
            .replace(
                "simulated = \"standby\"\nseed = 7", "resource = \"TCPIP::127.0.0.1::1::SOCKET\""));

    CommandRun run = CommandRun.of("run", "--rig=" + rig, "--session=" + session);

    assertEquals(2, run.exit(), run.err());
    assertTrue(run.err().contains("add --cautions-read"), run.err());
  }

  private Session kept() {
    try (SessionReader reader = SessionReader.open(session)) {
      return reader.session();
    }
  }
}
