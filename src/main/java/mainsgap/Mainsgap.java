package mainsgap;

import mainsgap.cli.CommandLineFace;

/** The program's entry. */
public final class Mainsgap {
  private Mainsgap() {}

  /** Starts the program with the words of its command line. */
  public static void main(String[] args) {
    System.exit(CommandLineFace.run(args));
  }
}
