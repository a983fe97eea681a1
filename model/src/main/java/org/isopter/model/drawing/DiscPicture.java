package org.isopter.model.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.tissue.DiscMargin;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Site;

/** The optic discs as the examiner sees them, each of one size whatever its own. */
final class DiscPicture {

  private static final double RADIUS = 55;
  private static final double MIDDLE = 95;

  private final Sayings sayings;
  private final Svg svg = new Svg();

  private DiscPicture(Exam exam) {
    sayings = new Sayings(exam.view());
  }

  static Picture of(Exam exam) {
    DiscPicture picture = new DiscPicture(exam);
    List<String> right = picture.eye(Site.RIGHT, 140);
    List<String> left = picture.eye(Site.LEFT, 420);
    double end = Math.max(picture.svg.lines(140, 185, right), picture.svg.lines(420, 185, left));
    return picture.svg.picture(
        "isopter-discs",
        "Optic discs" + SeenBy.EXAMINER.words(),
        Svg.said(Site.RIGHT, right) + " " + Svg.said(Site.LEFT, left),
        end);
  }

  private List<String> eye(Site eye, double x) {
    svg.title(x, eye);
    svg.circle(x, MIDDLE, RADIUS, margin(sayings.only(Discs.MARGIN, eye)));
    cup(eye, x);
    sayings
        .only(Discs.SWELLING, eye)
        .filter(swelling -> swelling.presence() == Presence.PRESENT)
        .ifPresent(
            swelling ->
                svg.circle(x, MIDDLE, RADIUS + 12, Svg.LINE + " stroke-dasharray=\"10 5\""));
    sayings
        .only(Discs.HAEMORRHAGE, eye)
        .filter(blood -> blood.presence() == Presence.PRESENT)
        .flatMap(Discs.Haemorrhage::clockHour)
        .ifPresent(hour -> blood(hour, x));
    return said(eye);
  }

  private static String margin(Optional<DiscMargin> margin) {
    if (margin.isEmpty()) {
      return Svg.DOTTED;
    }
    return switch (margin.get()) {
      case CLEAR -> Svg.LINE;
      case PARTLY_BLURRED -> Svg.LINE + " stroke-dasharray=\"18 5\"";
      case BLURRED ->
          "fill=\"none\" stroke=\"currentColor\" stroke-width=\"5\" stroke-dasharray=\"3 4\"";
    };
  }

  /** Draws the cup where both ratios are known, else the one as a bar. */
  private void cup(Site eye, double x) {
    Optional<Double> high =
        sayings.only(Discs.VERTICAL_CUP, eye).map(ratio -> RADIUS * ratio.doubleValue());
    Optional<Double> wide =
        sayings.only(Discs.HORIZONTAL_CUP, eye).map(ratio -> RADIUS * ratio.doubleValue());
    if (high.isPresent() && wide.isPresent()) {
      svg.ellipse(
          x,
          MIDDLE,
          wide.get(),
          high.get(),
          "fill=\"currentColor\" fill-opacity=\"0.15\" stroke=\"currentColor\"");
    } else {
      high.ifPresent(half -> bar("M%s %s v%s", x, MIDDLE - half, 2 * half));
      wide.ifPresent(half -> bar("M%s %s h%s", x - half, MIDDLE, 2 * half));
      if (high.isEmpty() && wide.isEmpty()) {
        svg.words(x, MIDDLE + 4, "cup: " + undirected(eye));
      }
    }
  }

  /** Returns a ratio that has no direction to be drawn in. */
  private String undirected(Site eye) {
    return sayings
        .only(Discs.UNDIRECTED_CUP, eye)
        .map(ratio -> ratio.toPlainString())
        .orElse(sayings.unknown(eye));
  }

  private void bar(String path, double x, double y, double length) {
    svg.path(
        path.formatted(Svg.number(x), Svg.number(y), Svg.number(length)),
        Svg.LINE + " stroke-linecap=\"square\"");
  }

  /** Draws a flame at the hour of a clock on the disc, XII at its top. */
  private void blood(int hour, double x) {
    svg.path(
        "M%s %s l-5 12 h10 z".formatted(Svg.number(x), Svg.number(MIDDLE - RADIUS - 6)),
        "fill=\"#a3122a\" stroke=\"currentColor\" transform=\"rotate(%d %s %s)\""
            .formatted(hour % 12 * 30, Svg.number(x), Svg.number(MIDDLE)));
  }

  private List<String> said(Site eye) {
    List<String> said = new ArrayList<>(sayings.globe(eye));
    said.addAll(sayings.recorded("View of the fundus", Globes.FUNDUS_VIEW, eye));
    said.addAll(sayings.ofDrawn("Swelling", Discs.SWELLING, eye));
    said.addAll(sayings.ofDrawn("Margin", Discs.MARGIN, eye));
    said.addAll(sayings.of("Colour", Discs.COLOUR, eye));
    said.addAll(sayings.ofDrawn("Vertical cup-disc", Discs.VERTICAL_CUP, eye));
    said.addAll(sayings.ofDrawn("Horizontal cup-disc", Discs.HORIZONTAL_CUP, eye));
    said.addAll(sayings.recorded("Cup-disc, direction not stated", Discs.UNDIRECTED_CUP, eye));
    said.addAll(sayings.ofDrawn("Haemorrhage", Discs.HAEMORRHAGE, eye));
    return said;
  }
}
