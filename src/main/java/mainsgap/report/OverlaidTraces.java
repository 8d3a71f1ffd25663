package mainsgap.report;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
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
  private static final List<float[]> DASHES =
      List.of(
          new float[] {1, 0},
          new float[] {5, 2},
          new float[] {1.5f, 1.5f},
          new float[] {7, 2, 1.5f, 2});

  /** What stands at 0 on the time axis. */
  public enum Alignment {
    /** The loss of each trial, at whatever angle it fell. */
    LOSS("aligned at the loss", "time from the loss, ms"),
    /**
     * The same angle of the supply before: the traces agree until the first loss, and the losses
     * are spread over a cycle.
     */
    ANGLE(
        "angle normalised: aligned at the supply's last positive-going zero crossing before the loss",
        "time from the supply's zero crossing, ms");

    private final String words;
    private final String axis;

    Alignment(String words, String axis) {
      this.words = words;
      this.axis = axis;
    }

    /** The alignment for people. */
    public String words() {
      return words;
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
        double back = 1e3 * (trace.returnSeconds() - zeroSeconds(trace, alignment));
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
    double text = sheet.textPixels();
    g.setColor(sheet.look().quiet());
    g.setStroke(new BasicStroke((float) Math.max(1, text / 12)));
    g.draw(new Line2D.Double(plot.x(0), plot.area().getY(), plot.x(0), plot.area().getMaxY()));
    for (int i = 0; i < traces.size(); i++) {
      g.setColor(sheet.look().series(i));
      g.setStroke(stroke(i, text));
      g.draw(line(traces.get(i), plot));
    }
    for (int i = 0; i < traces.size(); i++) {
      instants(g, sheet, plot, i);
    }
    g.setClip(clip);
  }

  /** The loss where it is not at 0, hollow, and the return, both at the voltage there. */
  private void instants(Graphics2D g, FigureSheet sheet, AxisPlot plot, int index) {
    AlignedTrace trace = traces.get(index);
    double zero = zeroSeconds(trace, alignment);
    double radius = RADIUS * sheet.textPixels();
    if (alignment == Alignment.ANGLE) {
      mark(g, sheet, plot, index, trace.lossSeconds() - zero, radius, true);
    }
    if (trace.returnSeconds() != null) {
      mark(g, sheet, plot, index, trace.returnSeconds() - zero, radius, false);
    }
  }

  private void mark(
      Graphics2D g,
      FigureSheet sheet,
      AxisPlot plot,
      int index,
      double seconds,
      double radius,
      boolean hollow) {
    AlignedTrace trace = traces.get(index);
    double at = trace.capture().time().indexAt(seconds + zeroSeconds(trace, alignment));
    int sample = (int) Math.max(0, Math.min(trace.capture().time().length() - 1, Math.round(at)));
    double volts = trace.capture().output().voltsAt(sample);
    Marks.draw(
        g,
        Marks.ofUnit(index),
        plot.x(1e3 * seconds),
        plot.y(volts),
        radius,
        sheet.look().series(index),
        hollow);
  }

  /** The least and the most of each column of the drawing, so that nothing is hidden. */
  private Path2D line(AlignedTrace trace, AxisPlot plot) {
    Path2D.Double path = new Path2D.Double();
    double zero = zeroSeconds(trace, alignment);
    int columns = (int) Math.ceil(plot.area().getWidth());
    int last = trace.capture().time().length();
    double perColumn = (toMillis - fromMillis) / columns;
    boolean started = false;
    for (int column = 0; column < columns; column++) {
      int from = sampleAt(trace, zero, fromMillis + column * perColumn);
      int to = sampleAt(trace, zero, fromMillis + (column + 1) * perColumn);
      if (from >= last || to <= 0 || from == to) {
        continue;
      }
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int i = Math.max(0, from); i < Math.min(last, to); i++) {
        double volts = trace.capture().output().voltsAt(i);
        low = Math.min(low, volts);
        high = Math.max(high, volts);
      }
      double middle = trace.capture().time().secondsAt((from + to - 1) / 2.0);
      double x = plot.x(1e3 * (middle - zero));
      if (started) {
        path.lineTo(x, plot.y(high));
      } else {
        path.moveTo(x, plot.y(high));
        started = true;
      }
      if (low < high) {
        path.lineTo(x, plot.y(low));
      }
    }
    return path;
  }

  private static int sampleAt(AlignedTrace trace, double zero, double millis) {
    double at = Math.ceil(trace.capture().time().indexAt(zero + millis / 1e3));
    return (int) Math.max(-1, Math.min(trace.capture().time().length(), at));
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
        name,
        (g, x, y, text) -> {
          g.setColor(look.series(index));
          g.setStroke(stroke(index, text));
          g.draw(new Line2D.Double(x - 0.65 * text, y, x + 0.65 * text, y));
          Marks.draw(g, Marks.ofUnit(index), x, y, 0.3 * text, look.series(index), false);
        });
  }

  private static BasicStroke stroke(int index, double text) {
    float width = (float) Math.max(1.3, text / 11);
    float[] dashes = DASHES.get(index / 4 % DASHES.size()).clone();
    for (int i = 0; i < dashes.length; i++) {
      dashes[i] *= width;
    }
    return dashes[1] == 0
        ? new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
        : new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dashes, 0);
  }

  private static double zeroSeconds(AlignedTrace trace, Alignment alignment) {
    return switch (alignment) {
      case LOSS -> trace.lossSeconds();
      case ANGLE -> trace.angleSeconds() == null ? trace.lossSeconds() : trace.angleSeconds();
    };
  }

  private double mostVolts() {
    double most = 1;
    for (AlignedTrace trace : traces) {
      double zero = zeroSeconds(trace, alignment);
      int from = Math.max(0, sampleAt(trace, zero, fromMillis));
      int to = sampleAt(trace, zero, toMillis);
      for (int i = from; i < to; i++) {
        most = Math.max(most, Math.abs(trace.capture().output().voltsAt(i)));
      }
      most = Math.max(most, trace.header().task().nominalPeakVolts());
    }
    return HEADROOM * most;
  }
}
