package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import mainsgap.session.SessionHeader;

/**
 * The output voltages of several trials laid over each other.
 *
 * @param traces in the order in which they are drawn
 * @param alignment what stands at 0
 * @param fromMillis where the axis begins
 * @param toMillis where it ends
 */
public record OverlaidTraces(
    List<AlignedTrace> traces, Alignment alignment, double fromMillis, double toMillis)
    implements Figure {
  private static final double HEADROOM = 1.12;
  private static final double LEAST_AFTER_MILLIS = 30;
  private static final double CYCLES_AFTER_RETURN = 1.5;
  private static final double RADIUS = 0.36;

  /** What stands at 0 on the time axis. */
  public enum Alignment {
    /** The loss of each trial, at whatever angle it fell. */
    LOSS("at the loss", "aligned at the loss", "time from the loss, ms"),
    /**
     * The same angle of the supply before: the traces agree until the first loss, and the losses
     * are spread over a cycle.
     */
    ANGLE(
        "at the same angle",
        "angle normalised: aligned at the supply's last positive-going zero crossing before the loss",
        "time from the supply's zero crossing, ms");

    private final String shortWords;
    private final String words;
    private final String axis;

    Alignment(String shortWords, String words, String axis) {
      this.shortWords = shortWords;
      this.words = words;
      this.axis = axis;
    }

    /** At what they are aligned, in as few words as can be. */
    public String shortWords() {
      return shortWords;
    }

    /** The alignment for people. */
    public String words() {
      return words;
    }

    /** What stands at 0, on the capture's own axis. */
    double zeroSeconds(AlignedTrace trace) {
      return this == ANGLE && trace.angleSeconds() != null
          ? trace.angleSeconds()
          : trace.lossSeconds();
    }
  }

  /** Checks that there is something to draw. */
  public OverlaidTraces {
    traces = List.copyOf(traces);
    if (traces.isEmpty()) {
      throw new ReportException("no trial is chosen whose trace could be drawn: choose one");
    }
    if (!(fromMillis < toMillis)) {
      throw new ReportException(
          "a time axis from " + fromMillis + " ms to " + toMillis + " ms does not run forward");
    }
  }

  /** The traces from one cycle before the loss to a while after the last return. */
  public static OverlaidTraces of(List<AlignedTrace> traces, Alignment alignment) {
    double cycle = 20;
    double end = LEAST_AFTER_MILLIS;
    for (AlignedTrace trace : traces) {
      cycle = 1e3 * trace.header().task().cycleSeconds();
      if (trace.returnSeconds() != null) {
        double back = 1e3 * (trace.returnSeconds() - alignment.zeroSeconds(trace));
        end = Math.max(end, back + CYCLES_AFTER_RETURN * cycle);
      }
    }
    return new OverlaidTraces(traces, alignment, -cycle, end);
  }

  @Override
  public String title() {
    return traces.size() == 1 ? "Output voltage" : "Output voltages laid over each other";
  }

  @Override
  public void draw(Graphics2D g, FigureSheet sheet) {
    Rectangle2D room = FigureFrame.draw(g, sheet, words(sheet.look()));
    double most = mostVolts();
    AxisPlot plot =
        AxisPlot.draw(
            g,
            sheet,
            room,
            new AxisPlot.Range(fromMillis, toMillis),
            new AxisPlot.Range(-most, most),
            alignment.axis,
            "output voltage, V");
    Shape clip = g.getClip();
    g.clip(plot.area());
    g.setColor(sheet.look().quiet());
    g.setStroke(new BasicStroke((float) Math.max(1, sheet.textPixels() / 12)));
    g.draw(new Line2D.Double(plot.x(0), plot.area().getY(), plot.x(0), plot.area().getMaxY()));
    List<TraceLine> lines = lines();
    for (int i = 0; i < lines.size(); i++) {
      pen(i, sheet).line(g, lines.get(i).path(plot, fromMillis, toMillis));
    }
    for (int i = 0; i < lines.size(); i++) {
      instants(g, plot, lines.get(i), pen(i, sheet));
    }
    g.setClip(clip);
  }

  private List<TraceLine> lines() {
    return traces.stream().map(trace -> TraceLine.of(trace, alignment)).toList();
  }

  private static TracePen pen(int index, FigureSheet sheet) {
    return new TracePen(index, sheet.look(), sheet.textPixels());
  }

  /** The loss where it is not at 0, hollow, and the return, both at the voltage there. */
  private void instants(Graphics2D g, AxisPlot plot, TraceLine line, TracePen pen) {
    if (alignment == Alignment.ANGLE) {
      double loss = line.lossMillis();
      pen.mark(g, plot.x(loss), plot.y(line.voltsAt(loss)), RADIUS, true);
    }
    if (line.trace().returnSeconds() != null) {
      double back = 1e3 * (line.trace().returnSeconds() - line.zeroSeconds());
      pen.mark(g, plot.x(back), plot.y(line.voltsAt(back)), RADIUS, false);
    }
  }

  private FigureFrame.Words words(FigureLook look) {
    List<SessionHeader> headers = traces.stream().map(AlignedTrace::header).toList();
    String tasks =
        headers.stream()
            .map(header -> Wording.task(header.task()))
            .distinct()
            .collect(Collectors.joining("; "));
    String subtitle = FigureNotes.simulated(headers) + tasks + " · " + alignment.words();
    List<Legend.Entry> legend = new ArrayList<>();
    for (int i = 0; i < traces.size(); i++) {
      legend.add(entry(i, look));
    }
    List<String> notes = new ArrayList<>();
    if (headers.stream().map(SessionHeader::task).distinct().count() > 1) {
      notes.add(
          "Not compared: the trials are of different events or nominal values ("
              + tasks
              + "), their times are not alike.");
    }
    notes.addAll(FigureNotes.someSimulated(headers));
    notes.add(
        alignment == Alignment.LOSS
            ? "A mark stands at the return of each trace."
            : "A hollow mark stands at the loss of each trace, a filled one at its return.");
    notes.add(FigureNotes.TRANSFER_TIME);
    return new FigureFrame.Words(title(), subtitle, legend, notes);
  }

  private Legend.Entry entry(int index, FigureLook look) {
    AlignedTrace trace = traces.get(index);
    String name =
        trace.name()
            + FigureNotes.mark(
                trace.header(), true, traces.stream().map(AlignedTrace::header).toList());
    return new Legend.Entry(
        name, (g, x, y, text) -> new TracePen(index, look, text).legend(g, x, y));
  }

  private double mostVolts() {
    double most = 1;
    for (TraceLine line : lines()) {
      most = Math.max(most, line.mostVolts(fromMillis, toMillis));
      most = Math.max(most, line.trace().header().task().nominalPeakVolts());
    }
    return HEADROOM * most;
  }
}
