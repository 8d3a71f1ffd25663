package mainsgap.desk.findings;

/** Which traces are laid over each other. */
enum TracePick {
  LONGEST_OF_EACH("the longest of each unit"),
  LONGEST_OF_ALL("the longest " + TraceChoice.MOST + " at most"),
  TICKED("those ticked in the table");

  private final String words;

  TracePick(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
