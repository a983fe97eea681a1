package org.isopter.model.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.check.Rules;
import org.isopter.model.clinical.colour.PlateRule;
import org.isopter.model.clinical.field.FieldPattern;
import org.isopter.model.clinical.impairment.DrivingRule;
import org.isopter.model.clinical.pupil.PupilCauses;
import org.isopter.model.finding.Citation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each source names the work and where in it, or says that there is none to name. */
class SourcesPageTest {

  private static final Path PAGE = Path.of("..", "docs", "sources.md");

  /** No published work, said openly. */
  private static final Pattern NONE =
      Pattern.compile("no source|from memory|definition|computed|the wiring");

  /** Where in a work: a part of it that can be turned up, or its words; a number is none. */
  private static final Pattern PLACE =
      Pattern.compile(
          "\\b(abstracts?|tables?|chapter|ch\\. \\d+|Annex|p\\. ?\\d+|sections?|item \\d+|first page|results|"
              + "methods|summary|case report|key points|core features|coding note|note under|"
              + "critical signs|list \\d+|\\d+\\.\\d, note)\\b|\"[^\"]+\"|\\(\\d{4},\\d{4}\\)");

  /** A work: a year, a volume and page, a chapter, a standard's part, or a title in quotes. */
  private static final Pattern WORK = Pattern.compile("\\d|\"|WHO|NOVEL|Neurology");

  /** A name of a person, a journal or a body that publishes. */
  private static final Pattern NAME = Pattern.compile("\\b[A-Z][\\w'-]+");

  /** Codes have a table of their own in the page. */
  private static final Pattern OWN = Pattern.compile("SNOMED CT \\d+");

  static Stream<List<String>> rows() throws IOException {
    String page = Files.readString(PAGE, StandardCharsets.UTF_8);
    String table = page.substring(page.indexOf("| what | source | where in it |"));
    List<List<String>> rows =
        Arrays.stream(table.split("\n", -1))
            .skip(2)
            .takeWhile(line -> line.startsWith("|"))
            .map(line -> Arrays.stream(line.split("\\|", -1)).map(String::trim).toList())
            .toList();
    assertTrue(rows.size() > 30, rows.size() + " rows");
    return rows.stream();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void aRowNamesTheWorkAndWhereInIt(List<String> row) {
    assertEquals(5, row.size(), row.toString());
    String work = row.get(2);
    String where = row.get(3);
    assertFalse(work.isEmpty() || where.isEmpty(), row.toString());
    boolean none = NONE.matcher(work + " " + where).find();
    assertTrue(none || PLACE.matcher(where).find(), row.toString());
  }

  /** Where in it stands in the page: no work is cited that the page does not hold. */
  @Test
  void everyWorkThatIsCitedHasARow() throws IOException {
    Set<String> works =
        rows().flatMap(row -> names(row.get(2)).stream()).collect(Collectors.toSet());
    List<String> unknown =
        everyCitation()
            .flatMap(text -> Arrays.stream(text.split("; ", -1)))
            .filter(clause -> !OWN.matcher(clause).find() && !NONE.matcher(clause).find())
            .filter(clause -> names(clause).stream().limit(1).anyMatch(one -> !works.contains(one)))
            .distinct()
            .toList();
    assertEquals(List.of(), unknown);
  }

  private static List<String> names(String text) {
    return NAME.matcher(text).results().map(MatchResult::group).toList();
  }

  private static Stream<String> everyCitation() {
    return Stream.of(
            citations(),
            Rules.all().stream().map(rule -> rule.source().text()),
            Arrays.stream(FieldPattern.values()).map(one -> one.source().text()),
            Arrays.stream(PlateRule.values()).map(one -> one.source().text()),
            Arrays.stream(DrivingRule.values()).map(one -> one.source().text()))
        .flatMap(texts -> texts);
  }

  static Stream<String> citations() {
    return Stream.concat(
        Catalogue.standard().all().stream()
            .flatMap(finding -> finding.citations().stream().map(Citation::text)),
        PupilCauses.all().stream().map(row -> row.source().text()));
  }

  @Test
  void aCitationNamesAWorkOrSaysThatThereIsNone() {
    citations()
        .forEach(text -> assertTrue(NONE.matcher(text).find() || WORK.matcher(text).find(), text));
  }

  /** What a maker prints in a manual is no source of a term or a limit; a handbook is one. */
  @Test
  void noSourceIsAMakersManual() throws IOException {
    Pattern maker = Pattern.compile("(?i)(?<!The Wills Eye )\\b(manual|printout)\\b");
    String page = Files.readString(PAGE, StandardCharsets.UTF_8);
    assertFalse(maker.matcher(page).find(), "in the page of sources");
    citations().forEach(text -> assertFalse(maker.matcher(text).find(), text));
    assertFalse(maker.matcher(Citation.COMMON_PRACTICE.text()).find());
  }
}
