package org.isopter.model.derive;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.isopter.model.clinical.colour.PlateRule;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;

/**
 * Everything that the clinical functions say of an examination.
 *
 * <p>They speak of values that were found. A step that was not done, refused or impossible is said
 * in the record alone: nothing follows from it. Where several values of one kind stand side by side
 * and nothing tells which counts, no comparison is made.
 */
public final class Derivations {

  /**
   * The version of what is concluded here, a date; raised with every change of a kind of statement,
   * of its number, of the eyes or of the facts that it rests on, but not of its words.
   */
  public static final String RULES = "2026-11-28";

  /** The rule that colour plates are judged by unless others are named. */
  public static final PlateRule USUAL_PLATES = PlateRule.MANUFACTURER;

  private Derivations() {}

  /** Returns the derived statements in the order of an examination, plates by the usual rule. */
  public static List<Derived> of(Exam exam) {
    return of(exam.view());
  }

  /** Returns the derived statements of an examination by its view, plates by the usual rule. */
  public static List<Derived> of(ExamView facts) {
    return of(facts, List.of(USUAL_PLATES));
  }

  /**
   * Returns the derived statements in the order of an examination.
   *
   * @param plates the rules by which colour plates are judged, each by itself
   */
  public static List<Derived> of(Exam exam, List<PlateRule> plates) {
    return of(exam.view(), plates);
  }

  private static List<Derived> of(ExamView facts, List<PlateRule> plates) {
    return Stream.<Function<ExamView, Stream<Derived>>>of(
            AcuityDerivations::of,
            ImpairmentDerivations::of,
            PupilDerivations::of,
            seen -> ColourDerivations.of(seen, plates),
            FieldDerivations::of,
            DiscDerivations::of,
            LidDerivations::of,
            LensDerivations::of)
        .flatMap(group -> group.apply(facts))
        .toList();
  }
}
