package mainsgap.desk.trials;

import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.material2.Material2AL;
import org.kordamp.ikonli.material2.Material2MZ;

/** The shape beside the words of a sign: it tells the same to eyes that do not tell colours. */
final class SignShape {
  private SignShape() {}

  static Ikon of(Sign.Kind kind) {
    return switch (kind) {
      case NOT_READY -> Material2AL.BUILD;
      case READY -> Material2MZ.PLAY_CIRCLE_OUTLINE;
      case CONNECTING -> Material2MZ.SETTINGS_ETHERNET;
      case CHECKING -> Material2MZ.SEARCH;
      case ARMED -> Material2MZ.REMOVE_RED_EYE;
      case CAUGHT -> Material2AL.FLASH_ON;
      case READING -> Material2AL.GET_APP;
      case LOGGING -> Material2MZ.SAVE;
      case PASSED -> Material2AL.CHECK_CIRCLE;
      case FAILED -> Material2AL.CANCEL;
      case INCONCLUSIVE -> Material2AL.HELP;
      case MEASURED -> Material2MZ.STRAIGHTEN;
      case REFUSED -> Material2MZ.REMOVE_CIRCLE;
      case NO_TRIGGER -> Material2MZ.NOTIFICATIONS_OFF;
      case OPEN_SWITCH -> Material2MZ.POWER_OFF;
      case CLOSE_SWITCH -> Material2MZ.POWER;
      case WORD_ASKED -> Material2MZ.PAN_TOOL;
      case SETTLING -> Material2AL.HOURGLASS_EMPTY;
      case STOPPING, STOPPED -> Material2MZ.STOP;
      case SERIES_PASSED -> Material2AL.CHECK_CIRCLE;
      case SERIES_FAILED -> Material2AL.CANCEL;
      case NOT_YET_SHOWN -> Material2AL.HELP;
      case COMPLETE -> Material2AL.DONE_ALL;
      case INCOMPLETE -> Material2MZ.WARNING;
      case FAULT -> Material2AL.ERROR;
    };
  }
}
