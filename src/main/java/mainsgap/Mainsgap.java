package mainsgap;

import mainsgap.cli.CommandLineFace;
import mainsgap.desk.Desk;

/** The program's entry: with no words the window opens, where there is a display for it. */
public final class Mainsgap {
  private Mainsgap() {}

  /** Starts the program with the words of its command line. */
  public static void main(String[] args) {
    System.exit(
        args.length == 0
            ? Desk.open().map(CommandLineFace::sayWhyNoWindow).orElse(0)
            : CommandLineFace.run(args));
  }
}
