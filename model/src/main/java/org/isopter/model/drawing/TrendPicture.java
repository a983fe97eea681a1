package org.isopter.model.drawing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/**
 * One finding over time, each eye beside the other on the same scale; better acuity is higher. A
 * result without a number breaks the line.
 */
final class TrendPicture {

  private static final double TOP = 30;
  private static final double HEIGHT = 150;
  private static final double WIDTH = 200;
  private static final int TICKS = 4;

  private final Svg svg = new Svg();
  private final Finding<?> finding;
  private final List<TrendLine> lines;
  private final double least;
  private final double most;
  private final long from;
  private final long to;

  private TrendPicture(Finding<?> finding, List<TrendLine> lines) {
    this.finding = finding;
    this.lines = lines;
    List<Double> numbers = new ArrayList<>(lines.stream().flatMap(TrendPicture::ends).toList());
    double low = numbers.stream().mapToDouble(n -> n).min().orElse(0);
    double high = numbers.stream().mapToDouble(n -> n).max().orElse(1);
    least = finding == Acuities.DISTANCE ? Math.floor(low * 5) / 5 : 0;
    most =
        finding == Acuities.DISTANCE
            ? Math.max(Math.ceil(high * 5) / 5, least + 0.2)
            : finding == Colours.PLATES ? 100 : Math.max(40, Math.ceil(high / 10) * 10);
    from = times().stream().mapToLong(t -> t).min().orElse(0);
    to = times().stream().mapToLong(t -> t).max().orElse(0);
  }

  /** Returns the numbers of a line, and the ends of the band about its first. */
  private static Stream<Double> ends(TrendLine line) {
    List<Double> ends = new ArrayList<>();
    line.points()
        .forEach(point -> point.number().map(BigDecimal::doubleValue).ifPresent(ends::add));
    line.first()
        .flatMap(first -> line.limit().map(limit -> limit.most().doubleValue()))
        .ifPresent(
            apart -> {
              double first = line.first().orElseThrow().doubleValue();
              ends.add(first - apart);
              ends.add(first + apart);
            });
    return ends.stream();
  }

  private List<Long> times() {
    return lines.stream()
        .flatMap(line -> line.points().stream())
        .map(point -> point.when().toEpochSecond())
        .toList();
  }

  static Picture of(Finding<?> finding, List<TrendLine> lines) {
    return new TrendPicture(finding, lines).drawn();
  }

  private Picture drawn() {
    List<String> right = eye(Site.RIGHT, SeenBy.EXAMINER.x(Site.RIGHT));
    List<String> left = eye(Site.LEFT, SeenBy.EXAMINER.x(Site.LEFT));
    double y = TOP + HEIGHT + 40;
    double end =
        Math.max(
            svg.lines(SeenBy.EXAMINER.x(Site.RIGHT), y, right),
            svg.lines(SeenBy.EXAMINER.x(Site.LEFT), y, left));
    List<String> about = new ArrayList<>(together());
    about.addAll(about());
    end = svg.lines(280, end + 8, about);
    return svg.picture(
        "isopter-trend-" + finding.id(),
        finding.title() + " over time: right eye on the left",
        Svg.said(Site.RIGHT, right)
            + " "
            + Svg.said(Site.LEFT, left)
            + " "
            + String.join(". ", about)
            + ".",
        end);
  }

  private List<String> eye(Site eye, double x) {
    svg.title(x, eye);
    scale(x - WIDTH / 2);
    List<String> said = new ArrayList<>();
    char letter = 'a';
    for (TrendLine line : lines) {
      if (line.measured().site() == eye) {
        String name = String.valueOf(letter++);
        line(line, x - WIDTH / 2, name);
        said.add(name + (line.how().isEmpty() ? "" : ": " + line.how()));
        line.points().forEach(point -> said.add(day(point) + ": " + point.words()));
      }
    }
    return said.isEmpty() ? List.of("not recorded") : said;
  }

  /** Returns the results of both eyes together, which are not drawn. */
  private List<String> together() {
    return lines.stream()
        .filter(line -> line.measured().site() == Site.BOTH)
        .flatMap(line -> line.points().stream())
        .map(point -> "Both eyes together, " + day(point) + ": " + point.words())
        .toList();
  }

  private static LocalDate day(TrendLine.Point point) {
    return point.when().toLocalDate();
  }

  private void scale(double x) {
    for (int i = 0; i <= TICKS; i++) {
      double value = least + (most - least) * i / TICKS;
      double y = y(value);
      svg.path(
          "M%s %s h%s".formatted(Svg.number(x), Svg.number(y), Svg.number(WIDTH)),
          "fill=\"none\" stroke=\"#767676\" stroke-width=\"0.5\"");
      svg.words(x - 18, y + 4, Svg.number(value));
    }
    List<LocalDate> days =
        lines.stream()
            .flatMap(line -> line.points().stream())
            .map(TrendPicture::day)
            .sorted()
            .toList();
    svg.words(x + 20, TOP + HEIGHT + 18, days.get(0).toString());
    svg.words(x + WIDTH - 20, TOP + HEIGHT + 18, days.get(days.size() - 1).toString());
  }

  private double y(double value) {
    double share = (value - least) / (most - least);
    return TOP + HEIGHT * (finding == Acuities.DISTANCE ? share : 1 - share);
  }

  private double x(TrendLine.Point point, double left) {
    double share = to == from ? 0.5 : (double) (point.when().toEpochSecond() - from) / (to - from);
    return left + 10 + (WIDTH - 20) * share;
  }

  private void line(TrendLine line, double left, String name) {
    line.first()
        .filter(first -> line.isFollowed())
        .ifPresent(
            first -> line.limit().ifPresent(limit -> band(first.doubleValue(), limit, left)));
    Optional<TrendLine.Point> before = Optional.empty();
    for (TrendLine.Point point : line.points()) {
      double x = x(point, left);
      if (point.number().isEmpty()) {
        svg.words(x, TOP + HEIGHT - 4, name + ": no number");
        before = Optional.empty();
        continue;
      }
      double y = y(point.number().orElseThrow().doubleValue());
      before.ifPresent(
          one ->
              svg.path(
                  "M%s %s L%s %s"
                      .formatted(
                          Svg.number(x(one, left)),
                          Svg.number(y(one.number().orElseThrow().doubleValue())),
                          Svg.number(x),
                          Svg.number(y)),
                  Svg.LINE));
      svg.circle(x, y, 4, "fill=\"currentColor\"");
      svg.words(x, y - 8, name);
      before = Optional.of(point);
    }
  }

  /** Shades where a result is no change from the first, lighter where studies disagree. */
  private void band(double first, TrendBand limit, double left) {
    for (BigDecimal apart : List.of(limit.most(), limit.least())) {
      double one = y(Math.max(least, first - apart.doubleValue()));
      double other = y(Math.min(most, first + apart.doubleValue()));
      svg.path(
          "M%s %s h%s v%s h-%s z"
              .formatted(
                  Svg.number(left),
                  Svg.number(one),
                  Svg.number(WIDTH),
                  Svg.number(other - one),
                  Svg.number(WIDTH)),
          "fill=\"currentColor\" fill-opacity=\"0.1\"");
    }
  }

  private List<String> about() {
    List<String> about = new ArrayList<>(List.of(unit()));
    lines.stream()
        .filter(TrendLine::isFollowed)
        .flatMap(line -> line.limit().stream())
        .distinct()
        .forEach(
            limit ->
                about.add(
                    "Shaded: within the test-retest limit of the first result, " + limit.words()));
    if (lines.stream().anyMatch(line -> line.limit().isEmpty())) {
      about.add(
          "Of what is not shaded no published test-retest limit is carried here: whether a"
              + " difference is a change is not said");
    }
    return about;
  }

  private String unit() {
    if (finding == Acuities.DISTANCE) {
      return "In logMAR, better acuity higher";
    }
    return finding == Colours.PLATES ? "In per cent of the plates shown" : "In mmHg";
  }
}
