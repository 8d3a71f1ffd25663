package mainsgap.desk.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class TimeSpanTest {
  private static final TimeSpan RECORD = new TimeSpan(-2, 8);

  @Test
  void zoomingKeepsTheInstantUnderThePointer() {
    TimeSpan zoomed = new TimeSpan(0, 4).scaledAbout(1, 0.5);
    assertEquals(new TimeSpan(0.5, 2.5), zoomed);
    assertEquals(new TimeSpan(0, 4), zoomed.scaledAbout(1, 2));
  }

  @Test
  void noViewLeavesTheRecord() {
    assertEquals(new TimeSpan(-2, 1), new TimeSpan(-5, -2).within(RECORD, 0));
    assertEquals(new TimeSpan(5, 8), new TimeSpan(7, 10).within(RECORD, 0));
    assertEquals(RECORD, new TimeSpan(-50, 40).within(RECORD, 0));
    assertEquals(new TimeSpan(1, 2), new TimeSpan(1, 2).within(RECORD, 0));
  }

  @Test
  void noViewIsShorterThanTheLeast() {
    assertEquals(new TimeSpan(2.5, 3.5), new TimeSpan(2.9, 3.1).within(RECORD, 1));
    assertEquals(new TimeSpan(-2, -1), new TimeSpan(-2, -1.9).within(RECORD, 1));
    assertEquals(RECORD, new TimeSpan(0, 1).within(RECORD, 100));
  }

  @Test
  void endsBelongToIt() {
    assertTrue(RECORD.holds(-2));
    assertTrue(RECORD.holds(8));
    assertFalse(RECORD.holds(8.1));
    assertEquals(new TimeSpan(-2, 9), RECORD.and(new TimeSpan(8.5, 9)));
    assertEquals(new TimeSpan(-1, 9), RECORD.later(1));
  }

  @Test
  void aSpanWithoutLengthIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new TimeSpan(1, 1));
    assertThrows(IllegalArgumentException.class, () -> new TimeSpan(0, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new TimeSpan(0, Double.POSITIVE_INFINITY));
  }
}
