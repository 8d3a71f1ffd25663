package mainsgap.desk.findings;

import javafx.scene.control.Label;
import mainsgap.desk.manners.GrowingIcon;
import mainsgap.transfer.outcome.Verdict;
import org.jspecify.annotations.Nullable;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** A verdict by word, shape and colour. */
final class VerdictSign {
  private VerdictSign() {}

  static Label of(@Nullable Verdict verdict) {
    Label sign = new Label(verdict == null ? "not judged" : verdict.name());
    FontIcon unused = GrowingIcon.beside(sign, icon(verdict));
    sign.getStyleClass().addAll("verdict-sign", style(verdict));
    return sign;
  }

  private static Ikon icon(@Nullable Verdict verdict) {
    if (verdict == null) {
      return Material2MZ.REMOVE_CIRCLE_OUTLINE;
    }
    return switch (verdict) {
      case PASS -> Material2AL.CHECK_CIRCLE;
      case FAIL -> Material2AL.CANCEL;
      case INCONCLUSIVE -> Material2AL.HELP;
    };
  }

  private static String style(@Nullable Verdict verdict) {
    if (verdict == null) {
      return "not-judged";
    }
    return switch (verdict) {
      case PASS -> "passed";
      case FAIL -> "failed";
      case INCONCLUSIVE -> "inconclusive";
    };
  }
}
