package mainsgap.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.junit.jupiter.api.Test;

class LetteringTest {
  private static final Graphics2D G =
      new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();
  private final Lettering lettering = Lettering.plain(G, 20);

  @Test
  void namesThatDifferAtTheirEndsStillDifferWhenCut() {
    String one = lettering.fittedName("Invented Lumengrove Professional Tower, firmware 1.0", 260);
    String other =
        lettering.fittedName("Invented Lumengrove Professional Tower, firmware 2.0", 260);
    assertTrue(one.startsWith("Invented") && one.endsWith(" 1.0"), one);
    assertTrue(other.endsWith(" 2.0"), other);
    assertTrue(lettering.width(one) <= 260, one);
  }

  @Test
  void whatFitsIsLeftAsItIs() {
    assertEquals("Lumengrove", lettering.fittedName("Lumengrove", 500));
    assertEquals("Lumengrove", lettering.fitted("Lumengrove", 500));
  }

  @Test
  void nothingIsWiderThanItsRoom() {
    for (double most : List.of(30.0, 60.0, 100.0)) {
      assertTrue(
          lettering.width(lettering.fittedName("Invented Lumengrove 600", most)) <= most,
          "cut at " + most);
    }
  }
}
