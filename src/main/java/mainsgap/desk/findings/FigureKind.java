package mainsgap.desk.findings;

/** What the page can show of its sessions. */
enum FigureKind {
  TRIALS(1, "Trials"),
  RANKING(2, "Ranking"),
  FAST_AGAINST_CLEAN(3, "Fast against clean"),
  TRACES(4, "Traces");

  private final int number;
  private final String words;

  FigureKind(int number, String words) {
    this.number = number;
    this.words = words;
  }

  /** The digit that chooses it. */
  int number() {
    return number;
  }

  String words() {
    return words;
  }
}
