package org.isopter.model.drawing;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Site;

/** The pupils to one scale; the iris around them is 12 mm in all. */
final class PupilPicture {

  private static final double MILLIMETRE = 7;
  private static final double IRIS = 6 * MILLIMETRE;
  private static final int ROW = 116;

  private final ExamView exam;
  private final SeenBy view;
  private final Sayings sayings;
  private final Svg svg = new Svg();

  private PupilPicture(Exam exam, SeenBy view) {
    this.exam = exam.view();
    this.view = view;
    sayings = new Sayings(this.exam);
  }

  static Picture of(Exam exam, SeenBy view) {
    return new PupilPicture(exam, view.orUsually(SeenBy.EXAMINER)).drawn();
  }

  private Picture drawn() {
    double xRight = view.x(Site.RIGHT);
    double xLeft = view.x(Site.LEFT);
    svg.title(xRight, Site.RIGHT);
    svg.title(xLeft, Site.LEFT);
    double y = 30;
    for (Lighting light : Lighting.values()) {
      if (isMeasured(light)) {
        eye(Site.RIGHT, light, xRight, y + IRIS);
        eye(Site.LEFT, light, xLeft, y + IRIS);
        y += ROW;
      }
    }
    if (y < ROW) {
      unmeasured(Site.RIGHT, xRight, y + IRIS);
      unmeasured(Site.LEFT, xLeft, y + IRIS);
      y += ROW;
    }
    List<String> right = said(Site.RIGHT);
    List<String> left = said(Site.LEFT);
    double end = Math.max(svg.lines(xRight, y, right), svg.lines(xLeft, y, left));
    List<String> both =
        new ArrayList<>(sayings.of("Afferent defect", Pupils.AFFERENT_DEFECT, Site.BOTH));
    return svg.picture("isopter-pupils", "Pupils" + view.words(), right, left, both, end);
  }

  private boolean isMeasured(Lighting light) {
    return exam.seen(Pupils.SIZE).anyMatch(size -> size.value().lighting() == light);
  }

  /** Draws one eye in a light; of several sizes in that light none. */
  private void eye(Site eye, Lighting light, double x, double y) {
    List<Pupils.Size> sizes =
        exam.eye(eye).seen(Pupils.SIZE, size -> size.lighting() == light).map(Seen::value).toList();
    if (sizes.size() == 1) {
      Pupils.Size size = sizes.get(0);
      svg.circle(x, y, IRIS, "fill=\"#d5dbe0\" stroke=\"currentColor\"");
      svg.circle(x, y, size.diameter().value().doubleValue() * MILLIMETRE / 2, "fill=\"#111111\"");
      svg.words(x, y + IRIS + 16, size.diameter() + ", " + light.word() + " light");
    } else {
      unmeasured(eye, x, y);
      svg.words(
          x,
          y + IRIS + 16,
          (sizes.isEmpty() ? unsized(eye) : "several sizes, ") + light.word() + " light");
    }
  }

  private String unsized(Site eye) {
    return sayings.isGone(eye) ? "no eye, " : "not recorded, ";
  }

  private void unmeasured(Site eye, double x, double y) {
    svg.circle(x, y, IRIS, Svg.DOTTED);
    svg.words(x, y + 4, sayings.unknown(eye));
  }

  private List<String> said(Site eye) {
    List<String> said = new ArrayList<>(sayings.globe(eye));
    said.addAll(sayings.of("Size", Pupils.SIZE, eye));
    said.addAll(sayings.of("Outline", Pupils.OUTLINE, eye));
    said.addAll(sayings.of("Direct", Pupils.DIRECT, eye));
    said.addAll(sayings.of("Consensual", Pupils.CONSENSUAL, eye));
    said.addAll(sayings.of("Near", Pupils.NEAR, eye));
    return said;
  }
}
