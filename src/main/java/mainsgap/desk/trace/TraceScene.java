package mainsgap.desk.trace;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import mainsgap.signal.VoltExtent;
import org.jspecify.annotations.Nullable;

/**
 * All that a picture of traces shows; immutable. Every time in it counts from one zero, the loss.
 * Make one with {@link #of} and add to it with the methods that start with {@code with}.
 *
 * @param traces the first is drawn on top
 * @param curves fitted supplies
 * @param gap null where there is none to show
 * @param ruler the declared time; null where none is judged
 * @param cycleSeconds a cycle of the supply, for a look at the gap with a cycle around it
 * @param zeroWords what happened at the zero, such as "loss"
 * @param unit of the vertical axis, such as "V"
 * @param remark what is to be said beside the picture, as sentences; empty for nothing
 */
public record TraceScene(
    List<Trace> traces,
    List<Curve> curves,
    @Nullable Gap gap,
    @Nullable Ruler ruler,
    double cycleSeconds,
    String zeroWords,
    String unit,
    String remark) {

  /** Nothing recorded yet. */
  public static final TraceScene EMPTY = of(List.of());

  private static final double CYCLE_AT_50_HERTZ_SECONDS = 0.02;
  private static final TimeSpan NOTHING_RECORDED = new TimeSpan(-0.02, 0.06);

  /** Copies the lists. */
  public TraceScene {
    traces = List.copyOf(traces);
    curves = List.copyOf(curves);
    if (!(cycleSeconds > 0)) {
      throw new IllegalArgumentException("a cycle lasts longer than 0 s, found " + cycleSeconds);
    }
  }

  /** Traces alone, in volts from the loss, at cycles of 50 Hz. */
  public static TraceScene of(List<Trace> traces) {
    return new TraceScene(
        traces, List.of(), null, null, CYCLE_AT_50_HERTZ_SECONDS, "loss", "V", "");
  }

  /** The same with fitted supplies. */
  public TraceScene withCurves(List<Curve> shown) {
    return new TraceScene(traces, shown, gap, ruler, cycleSeconds, zeroWords, unit, remark);
  }

  /** The same with a gap, or none. */
  public TraceScene withGap(@Nullable Gap shown) {
    return new TraceScene(traces, curves, shown, ruler, cycleSeconds, zeroWords, unit, remark);
  }

  /** The same with the declared time, or none. */
  public TraceScene withRuler(@Nullable Ruler shown) {
    return new TraceScene(traces, curves, gap, shown, cycleSeconds, zeroWords, unit, remark);
  }

  /** The same with cycles of another length. */
  public TraceScene withCycle(double seconds) {
    return new TraceScene(traces, curves, gap, ruler, seconds, zeroWords, unit, remark);
  }

  /** The same with another event at the zero, or another unit. */
  public TraceScene withWords(String atZero, String ofAxis) {
    return new TraceScene(traces, curves, gap, ruler, cycleSeconds, atZero, ofAxis, remark);
  }

  /** The same with something to say beside it. */
  public TraceScene withRemark(String sentences) {
    return new TraceScene(traces, curves, gap, ruler, cycleSeconds, zeroWords, unit, sentences);
  }

  /** From the first sample of any trace to the last one. */
  public TimeSpan span() {
    return traces.stream().map(Trace::span).reduce(TimeSpan::and).orElse(NOTHING_RECORDED);
  }

  /**
   * The gap and the declared time with a cycle around them; where there is neither, the zero with a
   * cycle before and two after it; all where no trace holds the zero.
   */
  public TimeSpan focus() {
    TimeSpan all = span();
    double from = Math.min(0, gap == null ? 0 : gap.fromSeconds()) - cycleSeconds;
    double end =
        Math.max(
            gap == null ? 0 : gap.toSeconds(),
            ruler == null ? 0 : ruler.lengthSeconds() + ruler.guardSeconds());
    double to = end == 0 ? 2 * cycleSeconds : end + cycleSeconds;
    if (!all.holds(0)) {
      return all;
    }
    return new TimeSpan(from, to).within(all, 0);
  }

  /** The extent of all traces. */
  public VoltExtent extent() {
    return traces.stream()
        .map(trace -> trace.envelope().extent())
        .reduce(VoltExtent.NONE, VoltExtent::and);
  }

  /** What it shows, for who hears it read out. */
  public String words() {
    if (traces.isEmpty()) {
      return "no trace yet";
    }
    Stream<String> marks =
        Stream.concat(
            Stream.ofNullable(gap).map(shown -> "gap " + shown.label()),
            Stream.ofNullable(ruler).map(Ruler::label));
    return Stream.of(Stream.of(names()), marks, Stream.of(remark).filter(said -> !said.isEmpty()))
        .flatMap(part -> part)
        .collect(Collectors.joining("; "));
  }

  private String names() {
    return traces.stream().map(Trace::name).collect(Collectors.joining(", ", "traces: ", ""));
  }
}
