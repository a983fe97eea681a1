package org.isopter.model.simulate;

import static org.isopter.model.simulate.Group.AMBLYOPIA;
import static org.isopter.model.simulate.Group.CATARACT;
import static org.isopter.model.simulate.Group.CHIASM;
import static org.isopter.model.simulate.Group.GLAUCOMA;
import static org.isopter.model.simulate.Group.HEALTHY;
import static org.isopter.model.simulate.Group.NEUROPATHY;
import static org.isopter.model.simulate.Group.PAPILLOEDEMA;
import static org.isopter.model.simulate.Group.REFRACTIVE;
import static org.isopter.model.simulate.Group.STROKE;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.isopter.model.answer.pupil.DefectGrade;

/**
 * Every figure from which invented examinations are drawn. An affected eye takes the row of its
 * group where there is one; any other eye takes that of the healthy.
 *
 * <p>Each row says where its figures come from: a study, memory, common practice, or nowhere.
 */
public final class Figures {

  private static final String MEMORY = "from memory";
  private static final String INVENTED = "invented";
  private static final String PRACTICE = "common practice, no source";
  private static final String GLAUCOMA_TRIAL =
      "Early Manifest Glaucoma Trial, Heijl et al., Arch Ophthalmol 2002;120:1268";
  private static final String HYPERTENSION_TRIAL =
      "Idiopathic Intracranial Hypertension Treatment Trial, Wall et al., JAMA Neurol 2014";

  /**
   * The distribution of one measure in the affected eyes of one group at the first visit.
   *
   * @param yearly what a year adds to it
   * @param source where the figures come from
   */
  public record Row(
      Group group, Measure measure, NormalSpread spread, double yearly, String source) {}

  /**
   * How old the persons of a group are at their first visit, and how many are women.
   *
   * @param group the group
   * @param spread mean and standard deviation in years
   * @param least the least age
   * @param most the greatest age
   * @param women the share of women
   * @param source where the figures come from
   */
  record Years(
      Group group, NormalSpread spread, double least, double most, double women, String source) {

    double draw(Draw draw) {
      double age = spread.mean() + spread.deviation() * draw.normal();
      return Math.max(least, Math.min(most, age));
    }
  }

  /** How often each group turns up. */
  public static final Shares<Group> GROUPS =
      new Shares<>(
          Arrays.stream(Group.values())
              .collect(
                  Collectors.toMap(
                      Function.identity(),
                      Group::share,
                      (one, other) -> one,
                      java.util.LinkedHashMap::new)));

  /** How many visits a person has. */
  public static final Shares<Integer> VISITS =
      Shares.<Integer>list().and(1, 0.4).and(2, 0.25).and(3, 0.2).and(4, 0.1).and(5, 0.05).end();

  /** Months between two visits: each of 1 to this many is as likely. */
  public static final int LONGEST_INTERVAL = 12;

  /** In how many months half of what optic neuritis took comes back. */
  public static final double HALF_RECOVERED = 2;

  /** In how many months papilloedema falls by one grade. */
  public static final int MONTHS_PER_GRADE = 3;

  /** The notations in which acuity is written at a visit. */
  public static final Shares<Notation> NOTATIONS =
      Shares.<Notation>list()
          .and(Notation.METRIC, 0.5)
          .and(Notation.IMPERIAL, 0.15)
          .and(Notation.DECIMAL, 0.1)
          .and(Notation.LOGMAR, 0.15)
          .and(Notation.LETTERS, 0.1)
          .end();

  /** The grade of an afferent defect in optic neuritis. */
  public static final Shares<DefectGrade> NEURITIS_GRADES =
      Shares.<DefectGrade>list()
          .and(DefectGrade.TRACE, 0.1)
          .and(DefectGrade.GRADE_1, 0.25)
          .and(DefectGrade.GRADE_2, 0.35)
          .and(DefectGrade.GRADE_3, 0.3)
          .end();

  /** The grade of an afferent defect in glaucoma that has one. */
  public static final Shares<DefectGrade> GLAUCOMA_GRADES =
      Shares.of(DefectGrade.TRACE, 0.6, DefectGrade.GRADE_1, 0.4);

  /** The grade of papilloedema at the first visit. */
  public static final Shares<Integer> FRISEN =
      Shares.<Integer>list().and(1, 0.3).and(2, 0.35).and(3, 0.25).and(4, 0.1).end();

  /** The distributions of the measures. */
  public static final List<Row> ROWS =
      List.of(
          row(HEALTHY, Measure.ACUITY, -0.02, 0.07, 0, MEMORY),
          row(HEALTHY, Measure.PRESSURE, 15.5, 2.6, 0, "textbook value, from memory"),
          row(HEALTHY, Measure.CUP, 0.35, 0.13, 0, MEMORY),
          row(HEALTHY, Measure.SPHERE, 0.25, 1.2, 0, MEMORY),
          row(HEALTHY, Measure.CYLINDER, -0.75, 0.4, 0, PRACTICE),
          row(HEALTHY, Measure.PUPIL, 4.2, 0.7, 0, MEMORY),
          row(HEALTHY, Measure.PLATES, 14.6, 0.6, 0, PRACTICE),
          row(HEALTHY, Measure.RED, 100, 0, 0, "the better eye is the measure"),
          row(HEALTHY, Measure.MEAN_DEVIATION, -0.5, 1.2, 0, MEMORY),
          row(HEALTHY, Measure.LID, 4.2, 0.4, 0, MEMORY),
          row(REFRACTIVE, Measure.SPHERE, -2.2, 2, 0, PRACTICE),
          row(CATARACT, Measure.ACUITY, 0.4, 0.2, 0.12, PRACTICE),
          row(GLAUCOMA, Measure.ACUITY, 0.1, 0.15, 0.02, PRACTICE),
          row(GLAUCOMA, Measure.PRESSURE, 20, 4, 0, GLAUCOMA_TRIAL + " (median; SD invented)"),
          row(GLAUCOMA, Measure.CUP, 0.7, 0.12, 0.02, PRACTICE),
          row(GLAUCOMA, Measure.MEAN_DEVIATION, -7, 5, -0.8, PRACTICE),
          row(NEUROPATHY, Measure.ACUITY, 0.8, 0.65, 0, PRACTICE),
          row(NEUROPATHY, Measure.PLATES, 5, 3.5, 0, PRACTICE),
          row(NEUROPATHY, Measure.RED, 50, 18, 0, PRACTICE),
          row(NEUROPATHY, Measure.MEAN_DEVIATION, -12, 6, 0, PRACTICE),
          row(CHIASM, Measure.ACUITY, 0.2, 0.18, 0, PRACTICE),
          row(CHIASM, Measure.PLATES, 11, 2.5, 0, PRACTICE),
          row(CHIASM, Measure.MEAN_DEVIATION, -10, 4, 0, PRACTICE),
          row(STROKE, Measure.ACUITY, 0.06, 0.1, 0, PRACTICE),
          row(STROKE, Measure.MEAN_DEVIATION, -14, 3, 0, PRACTICE),
          row(AMBLYOPIA, Measure.ACUITY, 0.5, 0.22, 0, PRACTICE),
          row(AMBLYOPIA, Measure.SPHERE, 3, 1.5, 0, PRACTICE),
          row(PAPILLOEDEMA, Measure.ACUITY, 0.04, 0.1, 0, PRACTICE),
          row(PAPILLOEDEMA, Measure.CUP, 0.15, 0.08, 0, PRACTICE),
          row(
              PAPILLOEDEMA,
              Measure.MEAN_DEVIATION,
              -2.9,
              1.1,
              0,
              HYPERTENSION_TRIAL + " (-3.5 in the worse eye, -2.3 in the better)"));

  /** Age and sex of the groups; that of the healthy holds for a group without a row. */
  static final List<Years> YEARS =
      List.of(
          years(HEALTHY, 45, 20, 5, 95, 0.52, INVENTED),
          years(REFRACTIVE, 38, 17, 6, 90, 0.52, INVENTED),
          years(CATARACT, 73, 9, 45, 98, 0.56, INVENTED),
          years(
              GLAUCOMA,
              68,
              8,
              50,
              79,
              0.65,
              GLAUCOMA_TRIAL + " (165 of 255 were women; SD invented)"),
          years(
              NEUROPATHY,
              32,
              6.7,
              18,
              46,
              0.77,
              "Optic Neuritis Study Group, Arch Ophthalmol 1991 (SD and ends from memory)"),
          years(STROKE, 67, 12, 30, 95, 0.45, INVENTED),
          years(AMBLYOPIA, 9, 4, 4, 30, 0.5, INVENTED),
          years(
              PAPILLOEDEMA,
              29,
              7.4,
              18,
              60,
              0.976,
              HYPERTENSION_TRIAL + " (161 of 165 were women; ends from memory)"),
          years(
              Group.TONIC_PUPIL,
              38.3,
              9,
              16,
              70,
              0.73,
              "J Korean Ophthalmol Soc 2013;54(5), 16 of 22 were women (SD and ends invented)"));

  private static final java.util.Map<Group, java.util.Map<Measure, Row>> INDEX = index();

  private Figures() {}

  /** Returns how old the persons of a group are. */
  static Years years(Group group) {
    return YEARS.stream().filter(row -> row.group() == group).findFirst().orElse(YEARS.get(0));
  }

  private static Years years(
      Group group,
      double mean,
      double deviation,
      double least,
      double most,
      double women,
      String source) {
    return new Years(group, new NormalSpread(mean, deviation), least, most, women, source);
  }

  /** Returns the row for an affected eye of a group; for a healthy eye, ask for the healthy. */
  public static Row of(Group group, Measure measure) {
    return find(group, measure)
        .or(() -> find(HEALTHY, measure))
        .orElseThrow(() -> new IllegalStateException("no figures for " + measure));
  }

  private static Optional<Row> find(Group group, Measure measure) {
    return Optional.ofNullable(INDEX.get(group)).map(rows -> rows.get(measure));
  }

  private static java.util.Map<Group, java.util.Map<Measure, Row>> index() {
    return ROWS.stream()
        .collect(
            Collectors.groupingBy(
                Row::group,
                () -> new java.util.EnumMap<>(Group.class),
                Collectors.toMap(Row::measure, Function.identity())));
  }

  private static Row row(
      Group group, Measure measure, double mean, double deviation, double yearly, String source) {
    return new Row(group, measure, new NormalSpread(mean, deviation), yearly, source);
  }
}
