package org.isopter.model.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.sight.BlindSpotSize;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.sight.FieldTarget;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Values;
import org.isopter.model.value.Code;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** The visual field by confrontation, and the blind spot on a flat screen or in degrees. */
public final class Fields {

  static final Entries ENTRIES = new Entries();

  /**
   * A visual field tested by confrontation.
   *
   * @param regions what each tested region gave; a region that is not there was not spoken of
   * @param target what was shown, when stated
   * @param distance the distance to the examiner, when stated
   */
  public record Confrontation(
      Map<FieldRegion, Outcome<FieldResponse>> regions,
      Optional<FieldTarget> target,
      Optional<Quantity> distance) {

    public Confrontation {
      regions = Keyed.copy(FieldRegion.class, regions);
    }
  }

  /**
   * The edges of a blind spot, from fixation, as angles or as lengths on a flat screen.
   *
   * @param edges the edge in each measured direction
   * @param screen the distance of the screen, needed where an edge is a length
   * @param size the examiner's word, when given
   */
  public record BlindSpot(
      Map<Edge, Quantity> edges, Optional<Quantity> screen, Optional<BlindSpotSize> size) {

    public BlindSpot {
      edges = Keyed.copy(Edge.class, edges);
    }
  }

  /** An edge of the blind spot, named by where it lies. */
  public enum Edge {
    /** The edge nearest to fixation, measured outward from fixation. */
    NASAL("nasal-edge", "Nasal edge, outward from fixation"),
    /** The edge farthest from fixation, measured outward from fixation. */
    TEMPORAL("temporal-edge", "Temporal edge, outward from fixation"),
    /** The upper edge, measured upward from the height of fixation; below it is negative. */
    UPPER("upper-edge", "Upper edge, upward from the height of fixation"),
    /** The lower edge, measured upward from the height of fixation; below it is negative. */
    LOWER("lower-edge", "Lower edge, upward from the height of fixation");

    private final String key;
    private final String title;

    Edge(String key, String title) {
      this.key = key;
      this.title = title;
    }
  }

  private static final Map<FieldRegion, Part<Confrontation, FieldResponse>> REGIONS =
      Keyed.parts(FieldRegion.class, Fields::region);

  private static final Part<Confrontation, FieldTarget> TARGET =
      Part.optional(
          "target", "Target shown", Shapes.oneOf(FieldTarget.class), Confrontation::target);

  private static final Part<Confrontation, Quantity> DISTANCE =
      Part.optional(
              "distance",
              "Testing distance",
              Shapes.measure(
                  2, Span.of(Unit.METRE, "0.2", "2"), Span.of(Unit.CENTIMETRE, "20", "200")),
              Confrontation::distance)
          .coded(Code.snomed("252124009", "Test distance (observable entity)"));

  private static final Map<Edge, Part<BlindSpot, Quantity>> EDGES =
      Keyed.parts(Edge.class, Fields::edge);

  private static final Part<BlindSpot, Quantity> SCREEN =
      Part.optional(
          "screen-distance",
          "Distance of the flat screen",
          Shapes.measure(
              2,
              Span.of(Unit.METRE, "0.2", "3"),
              Span.of(Unit.CENTIMETRE, "20", "300"),
              Span.of(Unit.MILLIMETRE, "200", "3000")),
          BlindSpot::screen);

  private static final Part<BlindSpot, BlindSpotSize> SPOT_SIZE =
      Part.optional(
          "spot-size", "Size in words", Shapes.oneOf(BlindSpotSize.class), BlindSpot::size);

  /** The visual field by confrontation. */
  public static final Finding<Confrontation> CONFRONTATION =
      ENTRIES.add(
          Finding.of("confrontation-field", "Visual field by confrontation")
              .sided(
                  Site.LEFT,
                  Code.loinc("79808-2", "Left eye Visual field defects by Confrontation"))
              .code(Code.snomed("421640006", "Confrontation visual field (observable entity)"))
              .value(Layout.ofParts(confrontationParts(), Fields::confrontation))
              .by(FieldMethod.class)
              .cite("common practice, no source")
              .note(
                  "Nasal and temporal are those of the eye itself; full here is not a normal field.")
              .build());

  /** The blind spot. */
  public static final Finding<BlindSpot> BLIND_SPOT =
      ENTRIES.add(
          Finding.of("blind-spot", "Blind spot")
              .value(
                  Layout.ofParts(blindSpotParts(), Fields::blindSpot)
                      .rules(
                          new Rule.UnitNeeds(
                              EDGES.values().stream().<String>map(Part::key).toList(),
                              Unit.MILLIMETRE,
                              "screen-distance")))
              .by(FieldMethod.class)
              .cite("Wandell 1995: 12 to 15 deg temporal, 1.5 below, 5.5 wide, 7.5 high")
              .note("Enlarged is the examiner's word: no cut-off is published.")
              .build());

  private Fields() {}

  private static Part<Confrontation, FieldResponse> region(FieldRegion region) {
    return Part.orAbsent(
        region.key(),
        region.title(),
        Shapes.oneOf(FieldResponse.class),
        field -> Optional.ofNullable(field.regions().get(region)));
  }

  private static Part<BlindSpot, Quantity> edge(Edge edge) {
    return Part.optional(
        edge.key,
        edge.title,
        Shapes.measure(
            1, Span.of(Unit.DEGREE, "-30", "40"), Span.of(Unit.MILLIMETRE, "-2000", "3000")),
        spot -> Optional.ofNullable(spot.edges().get(edge)));
  }

  private static List<Part<Confrontation, ?>> confrontationParts() {
    List<Part<Confrontation, ?>> parts = new ArrayList<>(REGIONS.values());
    parts.add(TARGET);
    parts.add(DISTANCE);
    return parts;
  }

  private static List<Part<BlindSpot, ?>> blindSpotParts() {
    List<Part<BlindSpot, ?>> parts = new ArrayList<>(EDGES.values());
    parts.add(SCREEN);
    parts.add(SPOT_SIZE);
    return parts;
  }

  private static Confrontation confrontation(Values values) {
    return new Confrontation(
        Keyed.read(FieldRegion.class, REGIONS, values, Values::outcome),
        values.find(TARGET),
        values.find(DISTANCE));
  }

  private static BlindSpot blindSpot(Values values) {
    return new BlindSpot(
        Keyed.read(Edge.class, EDGES, values, Values::find),
        values.find(SCREEN),
        values.find(SPOT_SIZE));
  }
}
