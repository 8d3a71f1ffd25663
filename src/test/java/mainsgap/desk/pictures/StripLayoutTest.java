package mainsgap.desk.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import mainsgap.bench.RunningFigures;
import mainsgap.desk.pictures.StripLayout.Placed;
import mainsgap.transfer.claim.DeclaredClaim;
import mainsgap.transfer.outcome.Refused;
import org.junit.jupiter.api.Test;

class StripLayoutTest {
  private static final double EM = 14;

  @Test
  void theAxisStartsAtZeroAndHoldsTheDeclaredTimeAndTheBound() {
    StripLayout short1 = layout(InventedTrials.many(1, 2, 0.1), 900, 200);
    assertEquals(short1.left(), short1.x(0));
    assertTrue(short1.x(10.08) < short1.right());
    InventedTrials wide = InventedTrials.many(3, 8, 1.5);
    Double bound = wide.figures().upperToleranceBoundMillis();
    assertNotNull(bound);
    assertTrue(bound > 12, "of no use here: " + bound);
    StripLayout layout = layout(wide, 900, 200);
    assertTrue(layout.x(bound) < layout.right());
  }

  @Test
  void aTrialWithoutReturnStandsAtTheEdgeAndDoesNotPressTheOthers() {
    InventedTrials trials = InventedTrials.ofEveryKind();
    StripLayout layout = layout(trials, 900, 200);
    Placed none = placed(layout, 7);
    assertTrue(none.isBeyond());
    assertTrue(none.x() <= layout.right());
    assertTrue(layout.x(10) > 0.5 * layout.right());
    assertEquals("no return in 212.4 ms →", layout.beyondWords());
    trials.add(InventedTrials.noReturn(199));
    assertEquals("2 without return in 199 ms or more →", layout(trials, 900, 200).beyondWords());
  }

  @Test
  void aloneItIsOnTheAxis() {
    InventedTrials trials = new InventedTrials(null).add(InventedTrials.noReturn(212));
    StripScene scene = StripScene.of(trials.list(), null, RunningFigures.NONE);
    StripLayout layout = new StripLayout(scene, 900, 200, EM);
    assertEquals(layout.x(212), placed(layout, 1).x(), 1e-9);
  }

  @Test
  void whatHasNoTimeStandsLeftOfTheZero() {
    StripLayout layout = layout(InventedTrials.ofEveryKind(), 900, 200);
    assertTrue(placed(layout, 4).x() < layout.left() - EM / 2);
    assertEquals(layout.x(0), placed(layout, 6).x(), 1e-9);
  }

  @Test
  void marksDoNotCoverEachOtherWhileThereIsRoom() {
    for (int count : new int[] {2, 20, 100}) {
      StripLayout layout = layout(InventedTrials.many(count, 8.4, 0.3), 900, 200);
      List<Placed> all = layout.placed();
      assertEquals(count, all.size());
      for (int i = 0; i < count; i++) {
        for (int j = 0; j < i; j++) {
          double apart =
              Math.hypot(all.get(i).x() - all.get(j).x(), all.get(i).y() - all.get(j).y());
          assertTrue(apart >= 2 * layout.radius() - 1e-9, apart + " at " + layout.radius());
        }
      }
    }
  }

  @Test
  void allLieWithinThePictureHoweverManyThereAre() {
    InventedTrials trials = InventedTrials.many(600, 8.4, 0.01);
    for (int i = 0; i < 300; i++) {
      trials.add(new Refused("clipped"));
    }
    StripLayout layout = layout(trials, 500, 120);
    for (Placed one : layout.placed()) {
      assertTrue(one.x() > 0 && one.x() < 500, one.toString());
      assertTrue(one.y() >= layout.top() - 1e-9 && one.y() <= layout.bottom() + 1e-9);
    }
  }

  @Test
  void theNearestTrialIsFoundAndNoneFarAway() {
    StripLayout layout = layout(InventedTrials.ofEveryKind(), 900, 200);
    Placed one = placed(layout, 3);
    Placed found = layout.near(one.x() + 2, one.y() - 2);
    assertEquals(one, found);
    assertEquals(null, layout.near(300, 5));
  }

  @Test
  void aDeclaredZeroIsShownAtZero() {
    DeclaredClaim none = DeclaredClaim.ofMillis(0, "0 ms");
    StripScene scene =
        StripScene.of(
            new InventedTrials(none).add(InventedTrials.noInterruption()).list(),
            none,
            RunningFigures.NONE);
    assertEquals(20, scene.endMillis());
  }

  private static Placed placed(StripLayout layout, int number) {
    return layout.placed().stream()
        .filter(placed -> placed.point().number() == number)
        .findFirst()
        .orElseThrow();
  }

  private static StripLayout layout(InventedTrials trials, double width, double height) {
    StripScene scene = StripScene.of(trials.list(), InventedTrials.TEN, trials.figures());
    return new StripLayout(scene, width, height, EM);
  }
}
