package mainsgap.desk.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class AngleCoverageTest {

  @Test
  void theWidestStretchIsFoundWithinTheTurn() {
    assertEquals(new AngleCoverage(3, 100, 200), AngleCoverage.of(List.of(300.0, 10.0, 100.0)));
  }

  @Test
  void theWidestStretchIsFoundOverTheZero() {
    AngleCoverage coverage = AngleCoverage.of(List.of(80.0, 200.0, 290.0));
    assertEquals(new AngleCoverage(3, 290, 150), coverage);
    assertEquals("3 losses, none between 290° and 80°.", coverage.words());
  }

  @Test
  void oneLossOrNoneLeavesTheWholeTurn() {
    assertEquals("No loss yet.", AngleCoverage.of(List.of()).words());
    assertEquals(new AngleCoverage(1, 0, 360), AngleCoverage.of(List.of(360.0)));
  }
}
