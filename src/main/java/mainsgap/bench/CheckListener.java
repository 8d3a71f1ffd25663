package mainsgap.bench;

/** Hears of a check while it runs, on the thread that runs it. */
public interface CheckListener {

  /** What is done next. */
  void begun(String sentence);

  /** A question of the probe is through. */
  void asked(ProbedQuestion question);

  /** A message of the try is through. */
  void walked(WalkedMessage message);
}
