package org.isopter.model.clinical.pupil;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.Goldens;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;

/** Keeps the page of the table of causes current; {@code -Dgolden=update} writes it anew. */
class PupilCausesPageTest {

  private static final Path PAGE = Path.of("..", "docs", "pupil-causes.md");

  private static final String HEAD =
      """
      # What the signs of the pupils are held against

      All recorded signs are held against every row together. A row fits when it allows each of
      them; where one sign alone is against it, it is named with that sign. A sign that was not
      recorded excludes nothing, and is named where the rows that fit differ in it. Dilating drops
      that are recorded silence everything, unless they have a later time than the pupils. What was judged twice
      counts as either. Hippus is not read: people without disease have it too.

      What may cost sight or life when it is missed is **grave** and stands first; rows that are
      not grave are never named without one that is. Nothing here is a diagnosis, and no clinician
      has signed it off. Rows are written for the right side; the left is their mirror image.

      This page is written by a test from the table in `PupilCauses` (`-Dgolden=update`).

      ## Signs

      A row that does not speak of a sign allows its usual words alone.

      | sign | usual | other words |
      |---|---|---|
      """;

  @Test
  void isCurrent() throws IOException {
    Goldens.check(PAGE, page());
  }

  private static String page() {
    String signs =
        Stream.of(PupilSign.values())
            .map(PupilCausesPageTest::sign)
            .collect(Collectors.joining("\n"));
    String rows =
        PupilCauses.all().stream()
            .filter(row -> row.side() != Site.LEFT)
            .map(PupilCausesPageTest::row)
            .collect(Collectors.joining("\n\n"));
    return HEAD + signs + "\n\n## Rows\n\n" + rows + "\n";
  }

  private static String sign(PupilSign sign) {
    String other =
        sign.words().stream()
            .filter(word -> !sign.usual().contains(word))
            .collect(Collectors.joining(", "));
    return "| %s | %s | %s |".formatted(sign.title(), String.join(", ", sign.usual()), other);
  }

  private static String row(PupilCause row) {
    String grave = row.grave() ? "**grave**" : "not grave";
    String side = row.side() == Site.BOTH ? "" : "right ";
    String needs =
        row.needs().stream()
            .map(group -> "\n* named only with one of: " + cells(group))
            .collect(Collectors.joining());
    return "### %s%s\n\n%s; %s\n\n* allows: %s%s"
        .formatted(side, row.title(), grave, row.source().text(), cells(row.allowed()), needs);
  }

  private static String cells(Map<PupilSigns.Key, Set<String>> cells) {
    return cells.entrySet().stream()
        .sorted(
            Map.Entry.comparingByKey(
                Comparator.comparing(PupilSigns.Key::sign).thenComparing(PupilSigns.Key::site)))
        .map(one -> one.getKey() + " " + words(one.getKey().sign(), one.getValue()))
        .collect(Collectors.joining("; "));
  }

  private static String words(PupilSign sign, Set<String> words) {
    return words.equals(sign.words()) ? "any" : String.join(" or ", words);
  }
}
