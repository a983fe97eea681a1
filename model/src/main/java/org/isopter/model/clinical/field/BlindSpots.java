package org.isopter.model.clinical.field;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Fields.BlindSpot;
import org.isopter.model.catalogue.Fields.Edge;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * The size of a blind spot in degrees, whether its edges were measured as angles or on a flat
 * screen. Whether it is enlarged stays the examiner's word: no cut-off is published.
 */
public final class BlindSpots {

  /**
   * A blind spot along one direction.
   *
   * @param centre the middle of its edges in degrees from fixation, to 0.1; temporal and up are
   *     positive
   * @param extent the angle between its edges in degrees, to 0.1
   */
  public record Extent(BigDecimal centre, BigDecimal extent) {

    private static Extent between(double one, double two) {
      return new Extent(Numbers.round((one + two) / 2, 1), Numbers.round(Math.abs(two - one), 1));
    }
  }

  /**
   * A blind spot on a flat screen, in mm, each to 0.1.
   *
   * @param inner the edge nearest to fixation
   * @param outer the edge farthest from fixation
   * @param centreX where its middle lies, temporal of fixation
   * @param centreY where its middle lies, above fixation
   * @param width its width
   * @param height its height at its middle
   */
  public record OnScreen(
      BigDecimal inner,
      BigDecimal outer,
      BigDecimal centreX,
      BigDecimal centreY,
      BigDecimal width,
      BigDecimal height) {}

  private static final Citation SOURCE =
      new Citation(
          "flat screen by geometry; Wandell 1995: 12 to 15 degrees temporal, 1.5 below, 5.5 wide,"
              + " 7.5 high");

  private BlindSpots() {}

  /**
   * Returns the width; withheld unless both the nasal and the temporal edge were measured.
   *
   * @param spot the edges, as angles, or as lengths with the distance of the screen
   */
  public static Answer<Extent> width(BlindSpot spot) {
    StatementBuilder topic = topic("field.blind-spot-width", spot);
    return azimuth(spot, Edge.NASAL)
        .flatMap(inner -> azimuth(spot, Edge.TEMPORAL).map(outer -> Extent.between(inner, outer)))
        .map(extent -> given(topic, extent, "wide"))
        .orElseGet(
            () -> topic.withheld("No width: an edge, or the screen's distance, is missing."));
  }

  /**
   * Returns the height; withheld unless the upper and the lower edge were measured and, on a
   * screen, the other two, between which the height is taken.
   */
  public static Answer<Extent> height(BlindSpot spot) {
    StatementBuilder topic = topic("field.blind-spot-height", spot);
    return elevation(spot, Edge.LOWER)
        .flatMap(low -> elevation(spot, Edge.UPPER).map(high -> Extent.between(low, high)))
        .map(extent -> given(topic, extent, "high"))
        .orElseGet(
            () -> topic.withheld("No height: an edge, or the screen's distance, is missing."));
  }

  /**
   * Returns the width of the right eye's blind spot less that of the left, in degrees, to 0.1;
   * withheld when either has none.
   */
  public static Answer<BigDecimal> widerRight(BlindSpot right, BlindSpot left) {
    StatementBuilder topic =
        StatementBuilder.of(
            "field.blind-spot-difference", SOURCE, "right " + edges(right), "left " + edges(left));
    Optional<BigDecimal> one = width(right).value().map(Extent::extent);
    Optional<BigDecimal> two = width(left).value().map(Extent::extent);
    return one.flatMap(first -> two.map(first::subtract))
        .map(
            more ->
                topic.given(more, Certainty.COMPUTED, compared(more) + " No cut-off is published."))
        .orElseGet(() -> topic.withheld("The widths cannot be compared: one is missing."));
  }

  private static String compared(BigDecimal more) {
    return more.signum() == 0
        ? "Both blind spots are equally wide, as measured."
        : "The blind spot of the %s eye is wider by %s degrees."
            .formatted(more.signum() > 0 ? "right" : "left", more.abs());
  }

  /**
   * Returns a blind spot of known angles as it lies on a flat screen.
   *
   * @param screen the screen
   * @param centre the direction of its middle
   * @param width its width in degrees
   * @param height its height in degrees
   */
  public static OnScreen onScreen(
      FlatScreen screen, FlatScreen.Direction centre, double width, double height) {
    double inner = x(screen, centre.azimuth() - width / 2);
    double outer = x(screen, centre.azimuth() + width / 2);
    FlatScreen.Point middle = screen.meet(centre);
    double up = y(screen, centre, height / 2);
    double down = y(screen, centre, -height / 2);
    return new OnScreen(
        Numbers.round(inner, 1),
        Numbers.round(outer, 1),
        Numbers.round(middle.x(), 1),
        Numbers.round(middle.y(), 1),
        Numbers.round(outer - inner, 1),
        Numbers.round(up - down, 1));
  }

  private static double x(FlatScreen screen, double azimuth) {
    return screen.meet(new FlatScreen.Direction(azimuth, 0)).x();
  }

  private static double y(FlatScreen screen, FlatScreen.Direction centre, double above) {
    return screen.meet(new FlatScreen.Direction(centre.azimuth(), centre.elevation() + above)).y();
  }

  private static Optional<Double> azimuth(BlindSpot spot, Edge edge) {
    return edge(spot, edge)
        .flatMap(
            at ->
                angle(at)
                    .or(
                        () ->
                            seen(spot, new FlatScreen.Point(mm(at), 0))
                                .map(FlatScreen.Direction::azimuth)));
  }

  private static Optional<Double> elevation(BlindSpot spot, Edge edge) {
    return edge(spot, edge).flatMap(at -> angle(at).or(() -> elevationOnScreen(spot, mm(at))));
  }

  private static Optional<Double> elevationOnScreen(BlindSpot spot, double y) {
    return azimuth(spot, Edge.NASAL)
        .flatMap(inner -> azimuth(spot, Edge.TEMPORAL).map(outer -> (inner + outer) / 2))
        .flatMap(
            middle ->
                screen(spot)
                    .map(screen -> screen.direction(new FlatScreen.Point(x(screen, middle), y))))
        .map(FlatScreen.Direction::elevation);
  }

  private static Optional<FlatScreen.Direction> seen(BlindSpot spot, FlatScreen.Point point) {
    return screen(spot).map(screen -> screen.direction(point));
  }

  private static Optional<FlatScreen> screen(BlindSpot spot) {
    return spot.screen()
        .flatMap(Numbers::metres)
        .map(metres -> metres.doubleValue() * 1000)
        .filter(distance -> distance > 0)
        .map(FlatScreen::new);
  }

  private static Optional<Quantity> edge(BlindSpot spot, Edge edge) {
    return Optional.ofNullable(spot.edges().get(edge))
        .filter(at -> isAngle(at) || Numbers.metres(at).isPresent());
  }

  private static boolean isAngle(Quantity at) {
    return at.unit().equals(Unit.DEGREE);
  }

  private static Optional<Double> angle(Quantity at) {
    return Optional.of(at).filter(BlindSpots::isAngle).map(one -> one.value().doubleValue());
  }

  private static double mm(Quantity length) {
    return Numbers.metres(length).orElseThrow().doubleValue() * 1000;
  }

  private static StatementBuilder topic(String id, BlindSpot spot) {
    return new StatementBuilder(id, SOURCE, List.of(edges(spot)));
  }

  private static String edges(BlindSpot spot) {
    Stream<String> edges =
        spot.edges().entrySet().stream()
            .map(edge -> Concept.word(edge.getKey()) + " edge " + edge.getValue());
    String screen = spot.screen().map(Quantity::toString).orElse("not stated");
    return Stream.concat(edges, Stream.of("screen " + screen)).collect(Collectors.joining(", "));
  }

  private static Answer<Extent> given(StatementBuilder topic, Extent found, String along) {
    String text =
        "The blind spot is %s degrees %s, its middle at %s degrees."
            .formatted(found.extent(), along, found.centre());
    return topic.given(found, Certainty.COMPUTED, text);
  }
}
