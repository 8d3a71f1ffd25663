package mainsgap.desk.manners;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeskMemoryTest {
  @TempDir Path folder = Path.of("set by JUnit");

  @Test
  void whatWasKeptIsThereNextTime() {
    DeskMemory memory = DeskMemory.in(folder);
    memory.keep("rig", "C:\\Prüfstand\\rig = 1.toml");
    memory.keep("window.width", 1234.5);
    memory.save();
    DeskMemory next = DeskMemory.in(folder);
    assertEquals("C:\\Prüfstand\\rig = 1.toml", next.text("rig").orElse(""));
    assertEquals(1234.5, next.number("window.width").orElse(0));
  }

  @Test
  void anEmptyTextIsForgotten() {
    DeskMemory memory = DeskMemory.in(folder);
    memory.keep("rig", "a");
    memory.keep("rig", "");
    assertTrue(memory.text("rig").isEmpty());
  }

  @Test
  void aDamagedFileIsGoneOnWithout() throws IOException {
    Files.write(
        folder.resolve("desk.properties"), new byte[] {'a', '=', '\\', 'u', '0', (byte) 0xff});
    assertTrue(DeskMemory.in(folder).text("a").isEmpty());
  }

  @Test
  void whatIsNoNumberIsNone() {
    DeskMemory memory = DeskMemory.in(folder);
    memory.keep("window.width", "wide");
    assertTrue(memory.number("window.width").isEmpty());
  }

  @Test
  void aFolderThatCannotBeWrittenIsGoneOnWithout() throws IOException {
    Path file = Files.writeString(folder.resolve("no-folder"), "");
    DeskMemory memory = DeskMemory.in(file.resolve("below"));
    memory.keep("a", "b");
    memory.save();
    assertEquals("b", memory.text("a").orElse(""));
  }
}
