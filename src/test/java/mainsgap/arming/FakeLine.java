package mainsgap.arming;

import java.util.ArrayList;
import java.util.List;
import mainsgap.link.LinkClosedException;

/** The line of a commanded switch that moves the fake bench's mains, or fails as a test says. */
final class FakeLine implements SwitchLine {
  final List<String> told = new ArrayList<>();
  SwitchPosition says = SwitchPosition.UNKNOWN;
  boolean choosesAngle;

  /** How many of the next moves fail. */
  int failures;

  private final BenchFake bench;
  Runnable onOpening = () -> {};

  FakeLine(BenchFake bench) {
    this.bench = bench;
  }

  @Override
  public String words() {
    return "the fake switch";
  }

  @Override
  public synchronized void move(SwitchMove move) {
    if (failures > 0) {
      failures--;
      told.add("failed to " + move.verb());
      throw new LinkClosedException("its link is dead");
    }
    told.add(move.verb());
    if (move == SwitchMove.OPEN) {
      onOpening.run();
    }
    bench.mainsClosed = move == SwitchMove.CLOSE;
  }

  @Override
  public SwitchPosition position() {
    return says;
  }

  @Override
  public boolean choosesAngle() {
    return choosesAngle;
  }

  @Override
  public void openAt(double degrees) {
    told.add("open at " + degrees);
    bench.mainsClosed = false;
  }

  @Override
  public void close() {
    told.add("let go");
  }
}
