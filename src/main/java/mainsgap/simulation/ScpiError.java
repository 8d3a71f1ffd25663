package mainsgap.simulation;

/** The errors of SCPI-1999 volume 2 chapter 21 that the simulated instruments report. */
enum ScpiError {
  SYNTAX(-102, "Syntax error"),
  DATA_TYPE(-104, "Data type error"),
  PARAMETER_NOT_ALLOWED(-108, "Parameter not allowed"),
  MISSING_PARAMETER(-109, "Missing parameter"),
  UNDEFINED_HEADER(-113, "Undefined header"),
  HEADER_SUFFIX_OUT_OF_RANGE(-114, "Header suffix out of range"),
  INIT_IGNORED(-213, "Init ignored"),
  SETTINGS_CONFLICT(-221, "Settings conflict"),
  DATA_OUT_OF_RANGE(-222, "Data out of range"),
  ILLEGAL_PARAMETER_VALUE(-224, "Illegal parameter value"),
  DATA_STALE(-230, "Data corrupt or stale"),
  QUEUE_OVERFLOW(-350, "Queue overflow"),
  INPUT_BUFFER_OVERRUN(-363, "Input buffer overrun"),
  QUERY_INTERRUPTED(-410, "Query INTERRUPTED");

  private final int number;
  private final String text;

  ScpiError(int number, String text) {
    this.number = number;
    this.text = text;
  }

  String text() {
    return text;
  }

  /** As {@code SYSTem:ERRor?} answers it. */
  String reply() {
    return number + ",\"" + text + "\"";
  }

  /** The bit of the standard event status register: CME 5, EXE 4, DDE 3. */
  int eventBit() {
    return switch (number / 100) {
      case -1 -> 1 << 5;
      case -2 -> 1 << 4;
      case -4 -> 1 << 2;
      default -> 1 << 3;
    };
  }
}
