package mainsgap.desk.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.text.Text;
import mainsgap.arming.MainsState;
import mainsgap.bench.RigCheckEnd;
import org.jspecify.annotations.Nullable;

/**
 * The rig itself, drawn: the power from the wall through switch and unit to the load, the clips
 * upon it, and their leads down to the scope. All of it grows with the room that it has.
 */
final class RigDrawing extends Region {
  private static final double SMALLEST_SCALE = 0.86;
  private static final double LARGEST_SCALE = 3;
  private static final double WIRE_EM = 0.7;
  private static final double CORE_EM = 0.14;

  private final RigModel model;
  private final Map<Part, PartNode> parts = new EnumMap<>(Part.class);
  private final Map<Part, Lead> leads = new EnumMap<>(Part.class);
  private final Line wire = new Line();
  private final Line core = new Line();
  private final ScopeScreen screen = new ScopeScreen();
  private final PartPicture switchPicture = new PartPicture(PartPicture.SWITCH_OPEN);
  private final Node cautions;
  private final Text em = new Text("m");

  /** Draws the rig with {@code cautions} beside it; {@code open} hears which part was chosen. */
  RigDrawing(RigModel model, Node cautions, Consumer<Part> open) {
    this.model = model;
    this.cautions = cautions;
    getStyleClass().add("rig-drawing");
    setId("rig-drawing");
    em.setVisible(false);
    em.setManaged(false);
    wire.getStyleClass().add("rig-wire");
    core.getStyleClass().add("rig-wire-core");
    getChildren().addAll(em, wire, core);
    for (Part part : Part.values()) {
      add(part, open);
    }
    getChildren().add(cautions);
    getChildren().addAll(leads.values());
    model.checking().endProperty().addListener((property, was, is) -> showSeen());
    model.checking().outdatedProperty().addListener((property, was, is) -> showSeen());
    em.fontProperty().addListener((property, was, is) -> requestLayout());
    PartSteps.between(parts);
  }

  /** The node of {@code part}. */
  PartNode part(Part part) {
    return Objects.requireNonNull(parts.get(part));
  }

  private void add(Part part, Consumer<Part> open) {
    PartNode node = new PartNode(part, picture(part), part == Part.SCOPE, () -> open.accept(part));
    parts.put(part, node);
    getChildren().add(node);
    if (part.role().isPresent()) {
      leads.put(part, new Lead(part));
    }
    model.stateOf(part).addListener((property, was, is) -> show(part));
    show(part);
  }

  private @Nullable Node picture(Part part) {
    return switch (part) {
      case WALL -> new PartPicture(PartPicture.WALL);
      case SWITCH -> switchPicture;
      case UNIT -> new PartPicture(PartPicture.UNIT);
      case LOAD -> new PartPicture(PartPicture.LOAD);
      case SCOPE -> screen;
      case MAINS_CLIP, OUTPUT_CLIP, SECOND_LEG_CLIP, CURRENT_CLAMP -> null;
    };
  }

  private void show(Part part) {
    PartState state = model.stateOf(part).get();
    part(part).show(state);
    Lead lead = leads.get(part);
    if (lead != null) {
      lead.setVisible(state.level() != PartState.Level.ABSENT);
      lead.channel(
          part == Part.CURRENT_CLAMP
              ? model.fields().clamp.number.text()
              : model.fields().clip(part).number.text());
    }
    requestLayout();
  }

  private void showSeen() {
    RigCheckEnd end = model.checking().endProperty().get();
    RigCheckEnd.@Nullable Seen seen =
        end == null || model.checking().outdatedProperty().get() ? null : end.seen();
    screen.show(seen);
    switchPicture.draw(
        seen != null && seen.mains() == MainsState.PRESENT
            ? PartPicture.SWITCH_CLOSED
            : PartPicture.SWITCH_OPEN);
  }

  private double emPixels() {
    return em.getFont().getSize();
  }

  @Override
  protected double computeMinWidth(double height) {
    return SMALLEST_SCALE * RigPlan.WIDTH * emPixels();
  }

  @Override
  protected double computeMinHeight(double width) {
    return SMALLEST_SCALE * RigPlan.HEIGHT * emPixels();
  }

  @Override
  protected double computePrefWidth(double height) {
    return computeMinWidth(height);
  }

  @Override
  protected double computePrefHeight(double width) {
    return computeMinHeight(width);
  }

  @Override
  protected void layoutChildren() {
    double base = emPixels();
    double scale =
        Math.min(getWidth() / (RigPlan.WIDTH * base), getHeight() / (RigPlan.HEIGHT * base));
    scale = Math.max(SMALLEST_SCALE, Math.min(LARGEST_SCALE, scale));
    double unit = base * scale;
    double left = Math.max(0, (getWidth() - RigPlan.WIDTH * unit) / 2);
    double top = Math.max(0, (getHeight() - RigPlan.HEIGHT * unit) / 2);
    String type = "-fx-font-size: " + unit + "px;";
    parts.forEach(
        (part, node) -> {
          node.setStyle(type);
          place(node, RigPlan.place(part), left, top, unit);
        });
    cautions.setStyle(type);
    place(cautions, RigPlan.CAUTIONS, left, top, unit);
    layoutWire(left, top, unit);
    leads.forEach((part, lead) -> lead.lay(RigPlan.way(part, left, top, unit), unit));
  }

  private void place(Node node, Rectangle2D at, double left, double top, double unit) {
    node.resizeRelocate(
        snapPositionX(left + at.getMinX() * unit),
        snapPositionY(top + at.getMinY() * unit),
        snapSizeX(at.getWidth() * unit),
        snapSizeY(at.getHeight() * unit));
  }

  private void layoutWire(double left, double top, double unit) {
    for (Line line : new Line[] {wire, core}) {
      line.setStartX(left + RigPlan.WIRE_FROM_X * unit);
      line.setEndX(left + RigPlan.WIRE_TO_X * unit);
      line.setStartY(top + RigPlan.WIRE_Y * unit);
      line.setEndY(top + RigPlan.WIRE_Y * unit);
    }
    wire.setStrokeWidth(WIRE_EM * unit);
    core.setStrokeWidth(CORE_EM * unit);
  }
}
