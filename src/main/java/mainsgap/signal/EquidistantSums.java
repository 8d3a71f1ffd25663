package mainsgap.signal;

/**
 * Sums over {@code n} equidistant times {@code t = T m}, {@code m = -(n-1)/2 ... (n-1)/2}, in
 * closed form: {@code sum cos(p m) = sin(n p/2) / sin(p/2)} (Dirichlet's kernel) and its
 * derivatives by {@code p}. The sums of {@code sin(p m)}, {@code t cos(p m)} and {@code t^2 sin(p
 * m)} are 0.
 *
 * @param count n, at least 1
 * @param intervalSeconds T, above 0
 */
record EquidistantSums(int count, double intervalSeconds) {
  /** Nearer to a whole turn than this a step counts as one. */
  private static final double WHOLE_TURN = 1e-9;

  /** {@code sum cos(p m)}. */
  double cosines(double step) {
    double sine = Math.sin(step / 2);
    return Math.abs(sine) < WHOLE_TURN ? count : Math.sin(count * step / 2) / sine;
  }

  /** {@code sum t sin(p m)}. */
  double timesSines(double step) {
    double sine = Math.sin(step / 2);
    return Math.abs(sine) < WHOLE_TURN ? 0 : -intervalSeconds * slope(step, sine);
  }

  /** {@code sum t^2 cos(p m)}. */
  double squaresCosines(double step) {
    double square = intervalSeconds * intervalSeconds;
    double sine = Math.sin(step / 2);
    if (Math.abs(sine) < WHOLE_TURN) {
      return square * count * ((double) count * count - 1) / 12;
    }
    double kernel = cosines(step);
    double curvature =
        (-0.25 * count * count * Math.sin(count * step / 2)
                - slope(step, sine) * Math.cos(step / 2)
                + 0.25 * kernel * sine)
            / sine;
    return -square * curvature;
  }

  /** The kernel's derivative by {@code p}. */
  private double slope(double step, double sine) {
    double rising = 0.5 * count * Math.cos(count * step / 2);
    return (rising - 0.5 * cosines(step) * Math.cos(step / 2)) / sine;
  }
}
