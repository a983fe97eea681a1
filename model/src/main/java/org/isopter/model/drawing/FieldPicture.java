package org.isopter.model.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.sight.BlindSpotSize;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/** The fields of both eyes by confrontation; not to scale. */
final class FieldPicture {

  private static final double RADIUS = 75;
  private static final double MIDDLE = 115;
  private static final double CENTRE = 14;
  private static final double SPOT = 32;

  private final SeenBy view;
  private final Sayings sayings;
  private final Svg svg = new Svg();

  /** The mark of what is not known of the eye that is being drawn. */
  private String unknown = "";

  private FieldPicture(Exam exam, SeenBy view) {
    sayings = new Sayings(exam.view());
    this.view = view;
  }

  static Picture of(Exam exam, SeenBy view) {
    return new FieldPicture(exam, view.orUsually(SeenBy.PERSON)).drawn();
  }

  private Picture drawn() {
    double xLeft = view.x(Site.LEFT);
    double xRight = view.x(Site.RIGHT);
    List<String> left = eye(Site.LEFT, xLeft);
    List<String> right = eye(Site.RIGHT, xRight);
    double end = Math.max(svg.lines(xLeft, 215, left), svg.lines(xRight, 215, right));
    return svg.picture(
        "isopter-fields",
        "Visual fields by confrontation" + view.words(),
        Svg.said(Site.LEFT, left) + " " + Svg.said(Site.RIGHT, right),
        end);
  }

  /** Draws an eye and returns what is said of it. */
  private List<String> eye(Site eye, double x) {
    int temporal = view.right() * (eye == Site.RIGHT ? 1 : -1);
    svg.title(x, eye);
    unknown = sayings.unknown(eye);
    svg.words(x + temporal * (RADIUS + 30), MIDDLE, "temporal");
    svg.words(x - temporal * (RADIUS + 24), MIDDLE, "nasal");
    Map<FieldRegion, Outcome<FieldResponse>> regions =
        sayings.only(Fields.CONFRONTATION, eye).map(Fields.Confrontation::regions).orElse(Map.of());
    quadrant(regions, FieldRegion.SUPEROTEMPORAL, x, temporal, -1);
    quadrant(regions, FieldRegion.SUPERONASAL, x, -temporal, -1);
    quadrant(regions, FieldRegion.INFEROTEMPORAL, x, temporal, 1);
    quadrant(regions, FieldRegion.INFERONASAL, x, -temporal, 1);
    svg.circle(x, MIDDLE, CENTRE, look(response(regions, FieldRegion.CENTRAL), true));
    sayings
        .only(Fields.BLIND_SPOT, eye)
        .flatMap(Fields.BlindSpot::size)
        .ifPresent(size -> spot(size, x + temporal * SPOT));
    List<String> said = new ArrayList<>(sayings.globe(eye));
    said.addAll(sayings.ofDrawn("Field", Fields.CONFRONTATION, eye));
    said.addAll(sayings.ofDrawn("Blind spot", Fields.BLIND_SPOT, eye));
    return said;
  }

  private void spot(BlindSpotSize size, double x) {
    double larger = size == BlindSpotSize.ENLARGED ? 1.8 : 1;
    svg.ellipse(
        x,
        MIDDLE + 3,
        5 * larger,
        7 * larger,
        "fill=\"#ffffff\" stroke=\"#000000\" stroke-width=\"2\"");
  }

  private void quadrant(
      Map<FieldRegion, Outcome<FieldResponse>> regions,
      FieldRegion region,
      double x,
      int across,
      int down) {
    Optional<FieldResponse> response = response(regions, region);
    svg.path(
        "M%s %s h%s A%s %s 0 0 %d %s %s z"
            .formatted(
                Svg.number(x),
                Svg.number(MIDDLE),
                Svg.number(across * RADIUS),
                Svg.number(RADIUS),
                Svg.number(RADIUS),
                across * down > 0 ? 1 : 0,
                Svg.number(x),
                Svg.number(MIDDLE + down * RADIUS)),
        look(response, false));
    boolean dark = response.filter(FieldResponse.ABSENT::equals).isPresent();
    svg.words(
        x + across * RADIUS * 0.45,
        MIDDLE + down * RADIUS * 0.5 + 4,
        word(regions, region),
        dark ? "fill=\"#ffffff\"" : "fill=\"currentColor\"");
  }

  private static Optional<FieldResponse> response(
      Map<FieldRegion, Outcome<FieldResponse>> regions, FieldRegion region) {
    return Optional.ofNullable(regions.get(region)).flatMap(Outcome::ifFound);
  }

  private String word(Map<FieldRegion, Outcome<FieldResponse>> regions, FieldRegion region) {
    return response(regions, region).map(FieldResponse::word).orElse(unknown);
  }

  /** A full region is open, a reduced one half dark by its edge, an absent one dark. */
  private static String look(Optional<FieldResponse> response, boolean centre) {
    if (response.isEmpty()) {
      return Svg.DOTTED;
    }
    return switch (response.get()) {
      case FULL -> Svg.LINE;
      case REDUCED ->
          "fill=\"currentColor\" fill-opacity=\"0.22\" stroke=\"currentColor\" stroke-width=\""
              + (centre ? "2.5" : "3")
              + "\" stroke-dasharray=\"7 3\"";
      case ABSENT -> "fill=\"#333333\" stroke=\"currentColor\" stroke-width=\"1.5\"";
    };
  }
}
