package mainsgap.scpi;

import java.util.Map;

/** What to try for an error number of SCPI-1999 Vol. 2 chapter 21; the words are our own. */
final class ErrorAdvice {
  private static final Map<Integer, String> BY_NUMBER =
      Map.ofEntries(
          Map.entry(-104, "the command wants another kind of value; check the profile"),
          Map.entry(-108, "the command takes fewer values; check the profile"),
          Map.entry(-109, "the command takes more values; check the profile"),
          Map.entry(
              -113,
              "the instrument does not know this command; choose a profile that fits this model"),
          Map.entry(-114, "it has no channel or unit of that number; choose one that it has"),
          Map.entry(-131, "it does not take this unit; send plain numbers in base units"),
          Map.entry(-138, "it does not take a unit here; send plain numbers in base units"),
          Map.entry(-201, "it is under local control; release its front panel lock and try again"),
          Map.entry(-203, "the setting is protected; unlock it at the instrument"),
          Map.entry(-211, "it was not waiting for a trigger; arm it first"),
          Map.entry(-213, "a measurement was already running; stop it, then start again"),
          Map.entry(
              -221, "the setting does not go with the others; check range, time base and memory"),
          Map.entry(-222, "the value is outside what it can do; choose one within its limits"),
          Map.entry(-223, "the message was too long for it; send less at a time"),
          Map.entry(-224, "it does not offer this choice; check the profile"),
          Map.entry(-225, "its memory is full; use a shorter record or fewer channels"),
          Map.entry(-230, "it has no valid data to give; take a new record first"),
          Map.entry(-231, "it doubts its own data; check the probes and the range, and repeat"),
          Map.entry(-240, "its hardware cannot do this; check the options that are fitted"),
          Map.entry(-241, "the hardware for this is not fitted; do without the function"),
          Map.entry(-321, "its memory is full; use a shorter record or fewer channels"),
          Map.entry(-330, "its self-test failed; have it serviced before you trust its readings"),
          Map.entry(-340, "its calibration failed; do not trust its readings until it is mended"),
          Map.entry(-350, "its error list overflowed and errors were lost; clear it and repeat"),
          Map.entry(-410, "a new message came before its reply was read; repeat the last step"),
          Map.entry(-420, "it was asked for a reply it did not have; check the command's spelling"),
          Map.entry(-430, "its buffers are full; send less at a time"),
          Map.entry(-440, "a query stood behind one that must be the last; send them one by one"));

  private ErrorAdvice() {}

  static String of(int number) {
    String advice = BY_NUMBER.get(number);
    return advice != null ? advice : ofClass(number);
  }

  private static String ofClass(int number) {
    if (number > 0) {
      return "this number is the instrument's own; look it up in its manual";
    }
    return switch (number / 100) {
      case -1 -> "it does not understand the command; choose a profile that fits this model";
      case -2 -> "it understood the command but could not do it now; check its settings and state";
      case -3 ->
          "it has a fault of its own; look at its screen, and switch it off and on if it stays";
      case -4 -> "question and answer got out of step; repeat the last step";
      default -> "look the number up in the instrument's manual";
    };
  }
}
