package org.isopter.model.simulate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.Goldens;
import org.isopter.model.value.Absence;
import org.junit.jupiter.api.Test;

/** The page of figures is made from the figures; {@code -Dgolden=update} writes it anew. */
class GeneratedCohortPageTest {

  private static final Path PAGE = Path.of("..", "docs", "generated-cohort.md");

  private static final String HEAD =
      """
      # Invented examinations

      <!-- Made from the figures; see GeneratedCohortPageTest. -->

      The command `generate` and the class `Cohort` make examinations of persons who do not exist,
      for tests, demonstrations and load. The figures they are drawn from stand below, and tests
      hold shares and several means of what is drawn against them. **Nothing here may be taken as epidemiology**: the shares make
      a file in which everything turns up, and most means are from memory or common practice. Age and sex
      stand in the header; a group without a row has those of the healthy.

      A person's examinations follow from the seed and the person's number alone. Acuity is drawn
      in logMAR and written in one notation at each visit. Values beyond the ends are set to the
      ends. An eye that is not affected, and a measure without a row for the group, takes the row of
      the healthy. Optic neuritis comes back by half every %s months toward the healthy; papilloedema
      falls by one grade every %s months; a visit follows the last by 1 to %s months.

      """
          .formatted(Figures.HALF_RECOVERED, Figures.MONTHS_PER_GRADE, Figures.LONGEST_INTERVAL);

  @Test
  void isCurrent() throws IOException {
    Goldens.check(PAGE, page());
  }

  private static String page() {
    return HEAD
        + table(
            "Groups",
            """
            The shares are invented: no published clinic has all of these in numbers that make a useful
            file. `generate --groups FILE` writes the word of each person's group, as the file of persons
            that `pool --persons` takes.

            | group | word | share | eyes affected |
            |---|---|---:|---|
            """,
            Arrays.stream(Group.values())
                .map(
                    g ->
                        "| %s | `%s` | %s | %s |"
                            .formatted(g.title(), g.word(), g.share(), word(g.extent()))))
        + table(
            "Measures at the first visit",
            "| group | measure | mean | SD | a year adds | source |\n|---|---|---:|---:|---:|---|\n",
            Figures.ROWS.stream().map(GeneratedCohortPageTest::row))
        + table(
            "Age and sex",
            "| group | mean | SD | least | most | women | source |\n|---|---:|---:|---:|---:|---:|---|\n",
            Figures.YEARS.stream().map(GeneratedCohortPageTest::years))
        + table(
            "What follows from what",
            """
            Each relation is tested on what is drawn, with a tolerance from the number of persons.

            | relation | number | source |
            |---|---:|---|
            """,
            Arrays.stream(Relation.values())
                .map(r -> "| %s | %s | %s |".formatted(r.title(), r.number(), r.source())))
        + table(
            "Ends, likeness and retest",
            """
            | measure | least | most | correlation of the eyes | retest SD |
            |---|---:|---:|---:|---:|
            """,
            Arrays.stream(Measure.values()).map(GeneratedCohortPageTest::measure))
        + table(
            "Steps",
            """
            A step is left out, or else said to be absent for a reason, with these shares: those of a
            defect where the pupils are looked at, those of perimetry where the field is measured.

            | step | left out | not done | refused | unable |
            |---|---:|---:|---:|---:|
            """,
            Arrays.stream(VisitStep.values()).map(GeneratedCohortPageTest::step))
        + table(
            "What is there or not",
            "| what | share |\n|---|---:|\n",
            Arrays.stream(Likelihood.values())
                .map(l -> "| %s | %s |".formatted(l.title(), l.share())))
        + table(
                "Other shares",
                "| what | shares |\n|---|---|\n",
                Stream.of(
                    shares("Visits of a person", Figures.VISITS),
                    shares("Notation of acuity", Figures.NOTATIONS),
                    shares("Afferent defect in optic neuritis", Figures.NEURITIS_GRADES),
                    shares("Afferent defect in glaucoma", Figures.GLAUCOMA_GRADES),
                    shares("Frisen grade of papilloedema", Figures.FRISEN)))
            .stripTrailing()
        + "\n";
  }

  private static String table(String title, String head, Stream<String> rows) {
    return "## " + title + "\n\n" + head + rows.collect(Collectors.joining("\n")) + "\n\n";
  }

  private static String row(Figures.Row row) {
    return "| %s | %s | %s | %s | %s | %s |"
        .formatted(
            row.group().title(),
            row.measure().title(),
            row.spread().mean(),
            row.spread().deviation(),
            row.yearly() == 0 ? "" : row.yearly(),
            row.source());
  }

  private static String years(Figures.Years row) {
    return "| %s | %s | %s | %s | %s | %s | %s |"
        .formatted(
            row.group().title(),
            row.spread().mean(),
            row.spread().deviation(),
            row.least(),
            row.most(),
            row.women(),
            row.source());
  }

  private static String measure(Measure m) {
    return "| %s | %s | %s | %s | %s |"
        .formatted(m.title(), m.least(), m.most(), m.likeness(), m.retest());
  }

  private static String step(VisitStep step) {
    return "| %s | %s | %s | %s | %s |"
        .formatted(
            word(step),
            step.silent(),
            step.absent(Absence.NOT_DONE),
            step.absent(Absence.REFUSED),
            step.absent(Absence.UNABLE));
  }

  private static String shares(String what, Shares<?> shares) {
    return shares.of().entrySet().stream()
        .map(entry -> word(entry.getKey()) + " " + entry.getValue())
        .collect(Collectors.joining(", ", "| " + what + " | ", " |"));
  }

  private static String word(Object thing) {
    return thing.toString().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }
}
