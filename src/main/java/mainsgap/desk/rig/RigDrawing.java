package mainsgap.desk.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.CubicCurve;
import javafx.scene.shape.Line;
import javafx.scene.text.Text;
import mainsgap.bench.RigCheckEnd;

/**
 * The rig itself, drawn: the power from the wall through switch and unit to the load, the clips
 * upon it, and their leads down to the scope. All of it grows with the room that it has.
 */
final class RigDrawing extends Region {
  private static final double WIDTH_EM = 60;
  private static final double HEIGHT_EM = 37;
  private static final double LARGEST_SCALE = 3;
  private static final double WIRE_Y_EM = 3.6;

  private static final Map<Part, Place> PLACES = new EnumMap<>(Part.class);

  static {
    PLACES.put(Part.WALL, new Place(0.5, 0.5, 10.5, 10));
    PLACES.put(Part.SWITCH, new Place(13, 0.5, 11.5, 10));
    PLACES.put(Part.UNIT, new Place(28.5, 0.5, 12.5, 10));
    PLACES.put(Part.LOAD, new Place(48.5, 0.5, 11, 10));
    PLACES.put(Part.MAINS_CLIP, new Place(13, 14, 11.4, 10.2));
    PLACES.put(Part.OUTPUT_CLIP, new Place(24.8, 14, 11.4, 10.2));
    PLACES.put(Part.SECOND_LEG_CLIP, new Place(36.6, 14, 11.2, 10.2));
    PLACES.put(Part.CURRENT_CLAMP, new Place(48.2, 14, 11.3, 10.2));
    PLACES.put(Part.SCOPE, new Place(20, 27.5, 34, 9));
  }

  /** Where each clip sits on the wire, in em from the left. */
  private static final Map<Part, Double> TAPS =
      Map.of(
          Part.MAINS_CLIP, 26.5,
          Part.OUTPUT_CLIP, 42.6,
          Part.SECOND_LEG_CLIP, 44.6,
          Part.CURRENT_CLAMP, 46.6);

  /** Where each lead comes in, as a part of the scope's width. */
  private static final Map<Part, Double> INPUTS =
      Map.of(
          Part.MAINS_CLIP, 0.08,
          Part.OUTPUT_CLIP, 0.36,
          Part.SECOND_LEG_CLIP, 0.64,
          Part.CURRENT_CLAMP, 0.92);

  /** A part's place in em. */
  private record Place(double x, double y, double width, double height) {}

  /** From the wire to the clip's card, and from there to the scope. */
  private record Lead(Circle tap, CubicCurve up, CubicCurve down) {}

  private final RigModel model;
  private final Map<Part, PartNode> parts = new EnumMap<>(Part.class);
  private final Map<Part, Lead> leads = new EnumMap<>(Part.class);
  private final Line wire = new Line();
  private final Line core = new Line();
  private final ScopeScreen screen = new ScopeScreen();
  private final Text em = new Text("m");
  private double scale = 1;

  /** Draws the rig; {@code open} hears which part was chosen. */
  RigDrawing(RigModel model, Consumer<Part> open) {
    this.model = model;
    getStyleClass().add("rig-drawing");
    setId("rig-drawing");
    em.setVisible(false);
    em.setManaged(false);
    wire.getStyleClass().add("rig-wire");
    core.getStyleClass().add("rig-wire-core");
    getChildren().addAll(em, wire, core);
    TAPS.keySet().forEach(this::addLead);
    for (Part part : Part.values()) {
      PartNode node = node(part);
      parts.put(part, node);
      node.setOnAction(event -> open.accept(part));
      model.stateOf(part).addListener((property, was, is) -> show(part));
      getChildren().add(node);
      show(part);
    }
    model.checking().endProperty().addListener((property, was, is) -> showSeen());
    model.checking().outdatedProperty().addListener((property, was, is) -> showSeen());
    em.fontProperty().addListener((property, was, is) -> requestLayout());
  }

  /** The node of {@code part}. */
  PartNode part(Part part) {
    return Objects.requireNonNull(parts.get(part));
  }

  private PartNode node(Part part) {
    return switch (part) {
      case SCOPE -> new PartNode(part, screen, true);
      case WALL, SWITCH, UNIT, LOAD -> new PartNode(part, PartNode.outline(part.id()), false);
      case MAINS_CLIP, OUTPUT_CLIP, SECOND_LEG_CLIP, CURRENT_CLAMP ->
          new PartNode(part, new Region(), false);
    };
  }

  private void addLead(Part part) {
    Lead lead = new Lead(new Circle(), new CubicCurve(), new CubicCurve());
    lead.tap().getStyleClass().addAll("rig-tap", part.id());
    lead.up().getStyleClass().addAll("rig-lead", part.id());
    lead.down().getStyleClass().addAll("rig-lead", part.id());
    leads.put(part, lead);
    getChildren().addAll(lead.up(), lead.down(), lead.tap());
  }

  private void show(Part part) {
    PartState state = model.stateOf(part).get();
    part(part).show(state);
    Lead lead = leads.get(part);
    if (lead != null) {
      boolean there = state.level() != PartState.Level.ABSENT;
      lead.tap().setVisible(there);
      lead.up().setVisible(there);
      lead.down().setVisible(there);
    }
    requestLayout();
  }

  private void showSeen() {
    RigCheckEnd end = model.checking().endProperty().get();
    screen.show(end == null || model.checking().outdatedProperty().get() ? null : end.seen());
  }

  private double emPixels() {
    return em.getFont().getSize();
  }

  @Override
  protected double computeMinWidth(double height) {
    return WIDTH_EM * emPixels();
  }

  @Override
  protected double computeMinHeight(double width) {
    return HEIGHT_EM * emPixels();
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
    double grown = Math.min(getWidth() / (WIDTH_EM * base), getHeight() / (HEIGHT_EM * base));
    scale = Math.max(1, Math.min(LARGEST_SCALE, grown));
    double unit = base * scale;
    double left = Math.max(0, (getWidth() - WIDTH_EM * unit) / 2);
    double top = Math.max(0, (getHeight() - HEIGHT_EM * unit) / 2);
    String type = "-fx-font-size: " + scale + "em;";
    PLACES.forEach(
        (part, place) -> {
          PartNode node = part(part);
          if (!type.equals(node.getStyle())) {
            node.setStyle(type);
          }
          node.resizeRelocate(
              snapPositionX(left + place.x() * unit),
              snapPositionY(top + place.y() * unit),
              place.width() * unit,
              place.height() * unit);
        });
    layoutWire(left, top, unit);
    leads.forEach((part, lead) -> layoutLead(part, lead, left, top, unit));
  }

  private void layoutWire(double left, double top, double unit) {
    for (Line line : new Line[] {wire, core}) {
      line.setStartX(left + 6 * unit);
      line.setEndX(left + 54 * unit);
      line.setStartY(top + WIRE_Y_EM * unit);
      line.setEndY(top + WIRE_Y_EM * unit);
    }
    wire.setStrokeWidth(0.7 * unit);
    core.setStrokeWidth(0.12 * unit);
  }

  private void layoutLead(Part part, Lead lead, double left, double top, double unit) {
    Place card = Objects.requireNonNull(PLACES.get(part));
    Place scope = Objects.requireNonNull(PLACES.get(Part.SCOPE));
    double tapX = left + Objects.requireNonNull(TAPS.get(part)) * unit;
    double tapY = top + WIRE_Y_EM * unit;
    double cardX = left + (card.x() + card.width() / 2) * unit;
    lead.tap().setCenterX(tapX);
    lead.tap().setCenterY(tapY);
    lead.tap().setRadius(0.5 * unit);
    curve(lead.up(), tapX, tapY, cardX, top + card.y() * unit, unit);
    double inputX =
        left + (scope.x() + scope.width() * Objects.requireNonNull(INPUTS.get(part))) * unit;
    curve(
        lead.down(),
        cardX,
        top + (card.y() + card.height()) * unit,
        inputX,
        top + scope.y() * unit,
        unit);
  }

  private static void curve(
      CubicCurve curve, double fromX, double fromY, double toX, double toY, double unit) {
    double middle = (fromY + toY) / 2;
    curve.setStartX(fromX);
    curve.setStartY(fromY);
    curve.setControlX1(fromX);
    curve.setControlY1(middle);
    curve.setControlX2(toX);
    curve.setControlY2(middle);
    curve.setEndX(toX);
    curve.setEndY(toY);
    curve.setStrokeWidth(0.22 * unit);
  }
}
