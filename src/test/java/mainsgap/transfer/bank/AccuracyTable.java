package mainsgap.transfer.bank;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import mainsgap.transfer.Measured;
import mainsgap.transfer.Outcome;
import mainsgap.transfer.TransferMeasurement;

/** Prints errors and coverage by kind. */
public final class AccuracyTable {
  private AccuracyTable() {}

  public static void main(String[] args) {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 50;
    String only = args.length > 1 ? args[1] : "";
    int verbose = args.length > 2 ? Integer.parseInt(args[2]) : 0;
    System.out.printf(
        "%-18s %5s %5s %9s %9s %9s %7s %9s %8s%n",
        "kind", "n", "bad", "med us", "p95 us", "max us", "cover", "med U us", "ms each");
    for (Kind kind : Kind.values()) {
      if (!only.isEmpty() && !kind.name().matches(only)) {
        continue;
      }
      List<Double> errors = new ArrayList<>();
      List<Double> us = new ArrayList<>();
      int covered = 0;
      int bad = 0;
      long nanos = 0;
      for (int seed = 1; seed <= count; seed++) {
        KnownCapture known = kind.capture(seed);
        long start = System.nanoTime();
        Outcome outcome = TransferMeasurement.measure(known.capture(), known.task());
        nanos += System.nanoTime() - start;
        if (outcome instanceof Measured measured) {
          double error = (measured.transferMillis() - known.transferMillis()) * 1e3;
          errors.add(Math.abs(error));
          us.add(measured.uncertaintyMillis() * 1e3);
          boolean in = Math.abs(error) <= measured.uncertaintyMillis() * 1e3;
          if (in) {
            covered++;
          }
          if ((verbose == 1 && !in) || (verbose == 2 && Math.abs(error) > 40)) {
            System.out.printf(
                Locale.ROOT,
                "  %s %d: error %.1f us (loss %.1f, return %.1f) U %.1f us gap %.3f dt %.1f us noise %.3f pow %.1f bits %s %s%n",
                kind,
                seed,
                error,
                (measured.lossSeconds() - known.lossSeconds()) * 1e6,
                (measured.returnSeconds() - known.returnSeconds()) * 1e6,
                measured.uncertaintyMillis() * 1e3,
                known.transferMillis(),
                known.capture().time().intervalSeconds() * 1e6,
                known.noiseShare(),
                measured.pointOnWaveDegrees(),
                measured.budget().components().stream()
                    .map(c -> String.format("%.1f", c.standardMillis() * 1e3))
                    .toList(),
                measured.furtherInterruptions());
          }
        } else {
          bad++;
          if (verbose > 0) {
            System.out.println(
                "  "
                    + kind
                    + " "
                    + seed
                    + ": "
                    + outcome.sentence()
                    + " gap "
                    + known.transferMillis());
          }
        }
      }
      double[] sorted = errors.stream().mapToDouble(d -> d).sorted().toArray();
      double[] su = us.stream().mapToDouble(d -> d).sorted().toArray();
      System.out.printf(
          Locale.ROOT,
          "%-18s %5d %5d %9.1f %9.1f %9.1f %6.1f%% %9.1f %8.1f%n",
          kind,
          count,
          bad,
          at(sorted, 0.5),
          at(sorted, 0.95),
          at(sorted, 1),
          100.0 * covered / Math.max(1, sorted.length),
          at(su, 0.5),
          nanos / 1e6 / count);
    }
  }

  private static double at(double[] sorted, double share) {
    return sorted.length == 0
        ? Double.NaN
        : sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  }
}
