package mainsgap.session;

import java.util.ArrayList;
import java.util.List;

/** A growing list of numbers in pieces, so that it grows without being copied. */
final class Numbers {
  private static final int PIECE = 65_536;

  private final List<double[]> pieces = new ArrayList<>();
  private int size;

  void add(double number) {
    if (size % PIECE == 0) {
      pieces.add(new double[PIECE]);
    }
    pieces.get(size / PIECE)[size % PIECE] = number;
    size++;
  }

  double get(int index) {
    return pieces.get(index / PIECE)[index % PIECE];
  }

  int size() {
    return size;
  }
}
