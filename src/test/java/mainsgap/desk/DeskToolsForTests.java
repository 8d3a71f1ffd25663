package mainsgap.desk;

import java.nio.file.Path;
import mainsgap.desk.manners.Appearance;
import mainsgap.desk.manners.Background;
import mainsgap.desk.manners.DeskMemory;
import mainsgap.desk.manners.DeskTools;
import mainsgap.desk.manners.Sounds;
import mainsgap.desk.manners.UiThread;
import mainsgap.waiting.Clock;

/** What pages work with in tests: silent, remembering in a folder of the test. */
public final class DeskToolsForTests {
  private DeskToolsForTests() {}

  /** All at once, on the calling thread: for models. */
  public static DeskTools atOnce(Path stateFolder) {
    DeskMemory memory = DeskMemory.in(stateFolder);
    return new DeskTools(
        Runnable::run,
        new Background(Runnable::run, Runnable::run),
        memory,
        new Appearance(memory),
        Sounds.none(memory),
        Clock.system());
  }

  /** On the threads of the program: for pages. */
  public static DeskTools asInTheProgram(Path stateFolder) {
    DeskMemory memory = DeskMemory.in(stateFolder);
    UiThread ui = UiThread.ofToolkit();
    return new DeskTools(
        ui,
        Background.onItsOwnThreads(ui),
        memory,
        new Appearance(memory),
        Sounds.none(memory),
        Clock.system());
  }
}
