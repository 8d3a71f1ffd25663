package mainsgap.desk.trace;

import java.util.List;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.css.CssMetaData;
import javafx.css.Styleable;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import javafx.stage.Window;
import mainsgap.signal.VoltExtent;

/**
 * The picture of recorded voltages over time, with the gap bracketed and the declared time beneath
 * it.
 *
 * <pre>{@code
 * // beside the UI thread: reads every sample once
 * Trace output = Trace.of("output", capture.time(), capture.output(), lossSeconds);
 * TraceScene scene =
 *     TraceScene.of(List.of(output))
 *         .withCurves(List.of(Curve.of("mains, as fitted", model, lossSeconds, span)))
 *         .withGap(Gap.of(0.00842, "8.42 ms ± 0.05 ms"))
 *         .withRuler(new Ruler(0.010, 0, "declared: at most 10 ms"))
 *         .withCycle(1 / 50.0);
 * // on the UI thread
 * view.show(scene);
 * }</pre>
 *
 * <p>Traces of many captures are laid over each other at their zeros: give each its own loss.
 * {@link #show} looks at {@link TraceScene#focus}, {@link #showKeepingView} stays where the user
 * looks. The wheel zooms at the pointer; dragging pans; a double click turns between the gap and
 * all. With the focus: arrows, plus, minus, Home for the gap with a cycle around it, End for all.
 * Two pictures under each other move together when their {@link #viewProperty} are bound in both
 * directions.
 *
 * <p>Colours come from the style sheet: {@code -trace-ground}, {@code -trace-grid}, {@code
 * -trace-axis}, {@code -trace-type}, {@code -trace-gap}, {@code -trace-ruler}. All sizes follow the
 * size of type. For the UI thread.
 */
public final class TraceView extends Region {
  private static final double LEAST_SAMPLES_IN_VIEW = 8;
  private static final double LEAST_VIEW_OF_NOTHING_SECONDS = 1e-4;

  private final PixelPicture picture = new PixelPicture();
  private final Pane type = new Pane();
  private final Legend legend = new Legend();
  private final PlotType plotType = new PlotType(type);
  private final Text em = new Text("0");
  private final ObjectProperty<TimeSpan> view =
      new SimpleObjectProperty<>(this, "view", TraceScene.EMPTY.focus()) {
        @Override
        public void set(TimeSpan span) {
          super.set(span.within(scene.span(), leastViewSeconds()));
        }
      };

  private TraceScene scene = TraceScene.EMPTY;
  private VoltExtent volts = PlotFrame.roomy(VoltExtent.NONE);
  private final TraceColours colours = new TraceColours(this, this::styleChanged);
  private boolean legendStale = true;
  private double plotLeft;
  private double plotWidth = 1;

  /** An empty picture. */
  public TraceView() {
    getStyleClass().add("trace-view");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setAccessibleText(scene.words());
    type.setManaged(false);
    type.setMouseTransparent(true);
    em.setManaged(false);
    em.setVisible(false);
    getChildren().addAll(picture.node(), type, legend, em);
    view.addListener((property, was, is) -> requestLayout());
    em.fontProperty().addListener((property, was, is) -> styleChanged());
    new TraceGestures(this);
  }

  /** What is shown. */
  public TraceScene scene() {
    return scene;
  }

  /** Shows {@code shown} from its focus: the gap with a cycle around it. */
  public void show(TraceScene shown) {
    take(shown);
    showFocus();
  }

  /** Shows {@code shown} where the view is now, as far as it reaches. */
  public void showKeepingView(TraceScene shown) {
    take(shown);
    setView(getView());
  }

  /** Looks at the gap and the declared time with a cycle around them. */
  public void showFocus() {
    setView(scene.focus());
  }

  /** Looks at the whole record. */
  public void showAll() {
    setView(scene.span());
  }

  /** The times in view, always within the record: what is set is moved to fit. */
  public ObjectProperty<TimeSpan> viewProperty() {
    return view;
  }

  /** The times in view. */
  public TimeSpan getView() {
    return view.get();
  }

  /** Looks at {@code span}, moved to fit. */
  public void setView(TimeSpan span) {
    view.set(span);
  }

  /** The style sheet's colours of every such picture. */
  public static List<CssMetaData<? extends Styleable, ?>> getClassCssMetaData() {
    return TraceColours.cssMetaData();
  }

  @Override
  public List<CssMetaData<? extends Styleable, ?>> getCssMetaData() {
    return getClassCssMetaData();
  }

  TraceColours colours() {
    return colours;
  }

  /** The instant under a place across this node. */
  double secondsAt(double x) {
    return getView().fromSeconds() + (x - plotLeft) * secondsPerUnit();
  }

  double secondsPerUnit() {
    return getView().lengthSeconds() / plotWidth;
  }

  @Override
  protected double computePrefWidth(double height) {
    return 48 * em.getFont().getSize();
  }

  @Override
  protected double computePrefHeight(double width) {
    return 24 * em.getFont().getSize();
  }

  @Override
  protected double computeMinWidth(double height) {
    return 16 * em.getFont().getSize();
  }

  @Override
  protected double computeMinHeight(double width) {
    return 10 * em.getFont().getSize();
  }

  @Override
  protected void layoutChildren() {
    double pixelsOfUsual = pixelsOfUsual();
    Palette palette = colours.palette();
    if (legendStale) {
      legend.show(scene, palette, pixelsOfUsual);
      legendStale = false;
    }
    PlotPlace place = PlotPlace.within(this, legend, em.getFont().getSize(), scene, pixelsOfUsual);
    plotLeft = place.left();
    plotWidth = place.width();
    PlotFrame frame = place.frame(getView(), volts);
    Grid grid = place.grid(frame);
    picture.resize(frame.widthPixels(), frame.heightPixels(), pixelsOfUsual);
    picture.paint(scene, frame, grid, palette, pixelsOfUsual);
    picture.node().relocate(place.left(), place.top());
    type.resizeRelocate(0, 0, getWidth(), getHeight());
    plotType.show(scene, place, frame, grid);
  }

  private void take(TraceScene shown) {
    scene = shown;
    volts = PlotFrame.roomy(shown.extent());
    legendStale = true;
    setAccessibleText(shown.words());
    requestLayout();
  }

  private void styleChanged() {
    legendStale = true;
    requestLayout();
  }

  private double leastViewSeconds() {
    return scene.traces().stream()
        .mapToDouble(trace -> trace.time().intervalSeconds() * LEAST_SAMPLES_IN_VIEW)
        .min()
        .orElse(LEAST_VIEW_OF_NOTHING_SECONDS);
  }

  private double pixelsOfUsual() {
    Window window = getScene() == null ? null : getScene().getWindow();
    return window == null ? 1 : window.getRenderScaleX();
  }
}
