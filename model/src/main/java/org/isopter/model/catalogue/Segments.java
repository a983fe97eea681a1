package org.isopter.model.catalogue;

import java.util.List;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.PosteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.answer.tissue.SegmentMethod;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shape;
import org.isopter.model.finding.Shapes;

/** Signs of the front and the back of the eye, as coded lists. */
public final class Segments {

  static final Entries ENTRIES = new Entries();

  /**
   * A sign and whether it is there; a sign that is not listed was not looked for.
   *
   * @param sign the sign
   * @param presence whether it is there
   * @param <S> the list of signs
   */
  public record Sign<S>(S sign, Presence presence) {}

  /** Signs of the front of the eye. */
  public static final Finding<Sign<AnteriorSign>> ANTERIOR =
      signs(
          "anterior-segment-sign",
          "Sign in the anterior segment",
          "anterior-sign",
          Shapes.oneOf(AnteriorSign.class));

  /** Signs of the back of the eye. */
  public static final Finding<Sign<PosteriorSign>> POSTERIOR =
      signs(
          "posterior-segment-sign",
          "Sign in the posterior segment",
          "posterior-sign",
          Shapes.oneOf(PosteriorSign.class));

  private Segments() {}

  private static <S> Finding<Sign<S>> signs(String id, String title, String key, Shape<S> list) {
    Part<Sign<S>, S> sign = Part.required(key, "Sign", list, Sign::sign);
    Part<Sign<S>, Presence> presence =
        Part.required("presence", "Presence", Shapes.oneOf(Presence.class), Sign::presence);
    return ENTRIES.add(
        Finding.of(id, title)
            .value(
                Layout.ofParts(
                    List.of(sign, presence),
                    parts -> new Sign<>(parts.get(sign), parts.get(presence))))
            .by(SegmentMethod.class)
            .distinguishedBy(sign)
            .cite("common practice, no source")
            .note("One entry for each sign that was looked for.")
            .build());
  }
}
