package org.isopter.model.catalogue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Shape;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** What sight does besides acuity, colour and field, and how those see who cannot say so. */
public final class VisualFunctions {

  static final Entries ENTRIES = new Entries();

  /**
   * How an eye of a person who cannot name letters fixes.
   *
   * @param central whether with its centre, when judged
   * @param steady whether without swinging, when judged
   * @param maintained whether it keeps fixing when the fellow is uncovered, when judged
   * @param follows whether it fixes and follows a target, when judged
   */
  public record Fixation(
      Optional<Boolean> central,
      Optional<Boolean> steady,
      Optional<Boolean> maintained,
      Optional<Boolean> follows) {}

  /**
   * Seeing of depth with both eyes.
   *
   * @param result whether there is any
   * @param disparity the least disparity that was seen, in seconds of arc, when measured
   */
  public record Stereopsis(Term result, Optional<Quantity> disparity) {}

  private static final Shape<Term> STEREO =
      Shapes.oneOfWords("stereopsis-result", "present", "absent");

  private static final Part<Fixation, Boolean> CENTRAL =
      Part.optional("central-fixation", "Fixation is central", Shapes.truth(), Fixation::central);

  private static final Part<Fixation, Boolean> STEADY =
      Part.optional("steady-fixation", "Fixation is steady", Shapes.truth(), Fixation::steady);

  private static final Part<Fixation, Boolean> MAINTAINED =
      Part.optional(
          "maintained-fixation", "Fixation is maintained", Shapes.truth(), Fixation::maintained);

  private static final Part<Fixation, Boolean> FOLLOWS =
      Part.optional("follows", "Fixes and follows", Shapes.truth(), Fixation::follows);

  private static final Part<Stereopsis, Quantity> DISPARITY =
      Part.optional(
          "disparity",
          "Least disparity seen",
          Shapes.measure(Unit.ARC_SECOND, "5", "6000", 0),
          Stereopsis::disparity);

  /** How an eye fixes. */
  public static final Finding<Fixation> FIXATION =
      ENTRIES.add(
          Finding.of("fixation-behaviour", "Fixation behaviour")
              .value(
                  Layout.ofParts(
                      List.of(CENTRAL, STEADY, MAINTAINED, FOLLOWS),
                      parts ->
                          new Fixation(
                              parts.find(CENTRAL),
                              parts.find(STEADY),
                              parts.find(MAINTAINED),
                              parts.find(FOLLOWS))))
              .at(Site.EACH_OR_BOTH)
              .cite("common practice, no source")
              .note("It is no acuity, and is converted to none.")
              .build());

  /** The finest grating that is preferred to a blank. */
  public static final Finding<Quantity> PREFERENTIAL_LOOKING =
      ENTRIES.add(
          Finding.of("preferential-looking", "Grating acuity by preferential looking")
              .value(Shapes.measure(Unit.CYCLES_PER_DEGREE, "0.1", "60", 2))
              .at(Site.EACH_OR_BOTH)
              .cite("data-entry limits: common practice, no source")
              .note("Gratings are seen better than letters: it is converted to no line of a chart.")
              .build());

  /** Seeing of depth. */
  public static final Finding<Stereopsis> STEREOPSIS =
      ENTRIES.add(
          Finding.of("stereopsis", "Stereopsis")
              .code(Code.snomed("359750002", "Stereoscopic acuity (observable entity)"))
              .value(
                  Layout.of(
                          STEREO,
                          Stereopsis::result,
                          List.of(DISPARITY),
                          (result, parts) -> new Stereopsis(result, parts.find(DISPARITY)))
                      .rules(new Rule.OnlyWith("disparity", Set.of(stereo("present")))))
              .at(Site.PAIR)
              .cite("data-entry limits: common practice, no source")
              .build());

  /** The faintest contrast that letters or gratings are seen at. */
  public static final Finding<BigDecimal> CONTRAST =
      ENTRIES.add(
          Finding.of("contrast-sensitivity", "Contrast sensitivity")
              .value(Shapes.number(Unit.LOG_UNIT, "0", "3", 2))
              .at(Site.EACH_OR_BOTH)
              .cite("data-entry limits: common practice, no source")
              .note("The logarithm of the reciprocal of the least contrast seen.")
              .build());

  /** How long an eye takes to read again after a bright light. */
  public static final Finding<Quantity> PHOTOSTRESS =
      ENTRIES.add(
          Finding.of("photostress-recovery", "Recovery time after bright light")
              .value(Shapes.measure(Unit.SECOND, "1", "900", 0))
              .cite("data-entry limits: common practice, no source")
              .build());

  /** A grid around fixation, as the person sees it. */
  public static final Finding<Term> GRID =
      ENTRIES.add(
          Finding.of("central-grid", "Grid around fixation")
              .value(
                  Shapes.oneOfWords(
                      "grid-appearance", "regular", "distorted", "gap", "distorted-with-gap"))
              .cite("common practice, no source")
              .note("As the person says, with the fellow eye covered.")
              .build());

  private VisualFunctions() {}

  private static Concept stereo(String word) {
    return ((org.isopter.model.finding.Spec.Coded) STEREO.spec())
        .answers()
        .byWord(word)
        .orElseThrow();
  }
}
