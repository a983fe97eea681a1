package org.isopter.mapper.describe;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.mapper.store.TableFormat;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A description counts what is there, and shows what is far out. */
class DescriptionTest {

  @TempDir Path folder;

  @Test
  void countsEachFactOnceAndEachReason() throws IOException {
    List<Exam> exams = new Cohort(40, 3).exams().toList();
    Description description = describe(exams.stream().map(DescriptionTest::line));
    long facts = exams.stream().mapToLong(exam -> exam.facts().size()).sum();
    long absent =
        exams.stream()
            .flatMap(exam -> exam.facts().stream())
            .filter(fact -> fact.outcome().ifAbsent().isPresent())
            .count();
    assertEquals(facts, sum(description, "What was examined", "found", "no value"));
    assertEquals(absent, sum(description, "What was examined", "no value"));
    assertEquals(
        absent,
        rows(description, "Why there was no value").stream()
            .filter(row -> row.get(1).equals("whole"))
            .mapToLong(row -> Long.parseLong(row.get(3)))
            .sum());
  }

  /** Tukey, Exploratory Data Analysis (1977): far out is beyond three times the middle spread. */
  @Test
  void listsWhatIsFarOut() throws IOException {
    Description description =
        describe(
            Stream.concat(
                Stream.iterate(0, i -> i + 1).limit(40).map(i -> pressure(i, 14 + i % 4)),
                Stream.of(pressure(40, 61))));
    List<List<String>> far = rows(description, "Numbers to look at");
    assertEquals(1, far.size());
    assertEquals("61 mmHg", far.get(0).get(3));
  }

  /**
   * 23 persons, of whom two have a blurred disc: of the 21 others and of all 23 the same is said,
   * so that no difference gives the two back; and the one pressure far out is nowhere.
   */
  @Test
  void nothingIsSaidOfFewPersonsNeitherByDifference() throws IOException {
    PoolPlan plan = PoolPlan.identified(folder.resolve("pool"));
    Stream<String> discs =
        Stream.iterate(0, i -> i + 1)
            .limit(23)
            .map(
                i ->
                    pressure(i, i == 9 ? 61 : 14 + i % 4)
                        .replace(
                            "{\"intraocular",
                            "{\"disc-margin\":{\"right\":\"%s\"},\"intraocular"
                                .formatted(i < 2 ? "blurred" : "clear")));
    describe(discs, plan);
    Description coarse = Survey.of(plan.folder(), Optional.empty(), new Coarse(5));
    List<List<String>> answers = rows(coarse, "Which answers were given");
    assertEquals(List.of(List.of("disc-margin", "value", "right", "clear", "20")), answers);
    assertEquals("25", rows(coarse, "How much there is").get(0).get(0));
    List<String> pressures = rows(coarse, "How the numbers are spread").get(0);
    assertEquals("25", pressures.get(7));
    assertEquals(List.of("", ""), List.of(pressures.get(10), pressures.get(14)));
    String page = DescriptionPage.of(coarse);
    assertFalse(
        page.contains("61 mmHg") || page.contains(">61<") || page.contains("blurred"), page);
    assertTrue(DescriptionPage.of(Survey.of(plan.folder())).contains("blurred: 2 times"));
  }

  /**
   * Ten dioptres inwards and six outwards are no eight; 95 and 5 degrees, or eleven o'clock and
   * one, have no mean; and the end of a scale is no pressure.
   */
  @Test
  void whatHasNoMeanTogetherHasNone() throws IOException {
    String eye =
        """
        {"disc-haemorrhage":{"right":{"value":"present","clock-hour":%d}},\
        "corneal-curvature":{"right":{"flat-power":"+43.00 D","steep-power":"+43.50 D","steep-axis":"%d deg"}},\
        "ocular-deviation":{"both":{"value":"%s","deviation-amount":"%d PD","fixation":"far"}},\
        "refraction":{"right":{"sphere":"-1.00 D","cylinder":"-1.00 D","axis":"90 deg"}},\
        "pressure-beyond-scale":{"right":{"value":"60 mmHg","beyond-limit":"above"}},"intraocular""";
    Description description =
        describe(
            Stream.of(
                pressure(1, 14).replace("{\"intraocular", eye.formatted(11, 95, "eso", 10)),
                pressure(2, 16).replace("{\"intraocular", eye.formatted(1, 5, "exo", 6))));
    Map<String, String> means = new java.util.TreeMap<>();
    for (List<String> row : rows(description, "How the numbers are spread")) {
      means.put(String.join(" ", row.get(0), row.get(1), row.get(2)).strip(), row.get(8));
    }
    assertEquals("10.0", means.get("ocular-deviation deviation-amount far, eso"));
    assertEquals("6.0", means.get("ocular-deviation deviation-amount far, exo"));
    assertEquals("", means.get("disc-haemorrhage clock-hour"));
    assertEquals("", means.get("corneal-curvature steep-axis"));
    assertEquals("-1.5", means.get("power-vector m"));
    assertEquals("15.0", means.get("intraocular-pressure value"));
    assertFalse(means.containsKey("pressure-beyond-scale value"), means::toString);
  }

  /** Of few numbers the quarters, and of fewer the median, are one person's or tell it. */
  @Test
  void quartersOfFewPersonsAreLeftOut() throws IOException {
    PoolPlan plan = PoolPlan.identified(folder.resolve("pool"));
    describe(Stream.iterate(0, i -> i + 1).limit(12).map(i -> pressure(i, 12 + i)), plan);
    List<String> of = List.of("mean", "least", "lower quarter", "median", "upper quarter", "most");
    assertEquals(List.of("17.5", "", "", "17.5", "", ""), numbers(plan, 5, of));
    assertEquals(List.of("17.5", "", "", "", "", ""), numbers(plan, 7, of));
    assertEquals(List.of("17.5", "", "14.75", "17.5", "20.25", ""), numbers(plan, 3, of));
  }

  private static List<String> numbers(PoolPlan plan, int fewest, List<String> of)
      throws IOException {
    Listing spread =
        Survey.of(plan.folder(), Optional.empty(), new Coarse(fewest)).listings().stream()
            .filter(listing -> listing.title().equals("How the numbers are spread"))
            .findFirst()
            .orElseThrow();
    return of.stream().map(spread.columns()::indexOf).map(spread.rows().get(0)::get).toList();
  }

  /** One person who was seen often is one person. */
  @Test
  void personsAreCountedAndNotFacts() throws IOException {
    PoolPlan plan = PoolPlan.identified(folder.resolve("pool"));
    Stream<String> often =
        Stream.iterate(0, i -> i + 1)
            .limit(8)
            .map(i -> pressure(i, 20).replaceAll("\"p-[0-9]+\"", "\"p-1\""));
    describe(often, plan);
    Description coarse = Survey.of(plan.folder(), Optional.empty(), new Coarse(5));
    assertEquals(List.of(), rows(coarse, "What was examined"));
  }

  /** Without any number, what is in a file does not tell that its column is one of numbers. */
  @Test
  void everyFormatIsDescribedAlikeAlsoWhereColumnsAreEmpty() throws IOException {
    String answer =
        pressure(1, 14)
            .replace("\"intraocular-pressure\"", "\"disc-margin\"")
            .replace("14 mmHg", "clear");
    for (List<String> lines : List.of(List.<String>of(), List.of(answer))) {
      Set<String> texts = new HashSet<>();
      for (TableFormat format : TableFormat.values()) {
        Path pool = folder.resolve(format + "-" + lines.size());
        texts.add(DescriptionText.of(describe(lines.stream(), plan(pool, format))));
      }
      assertEquals(1, texts.size(), texts::toString);
    }
  }

  @Test
  void tellsWhatIsToBeLeftOutOfCounts() throws IOException {
    String first = pressure(1, 14);
    String amended =
        pressure(2, 15).replace("\"final\"", "\"amended\",\"amends\":{\"id\":\"r-1\"}");
    Description description = describe(Stream.of(first, first, amended));
    assertEquals(
        List.of(List.of("amended", "1", "0", "0"), List.of("final", "1", "1", "1")),
        rows(description, "How far the records have come"));
  }

  @Test
  void numbersAreToldByCorrectionTechniqueAndChart() throws IOException {
    String record =
        pressure(1, 14)
            .replace("\"intraocular-pressure\"", "\"distance-acuity\"")
            .replace("14 mmHg\"", "6/12\",\"correction\":\"unaided\",\"chart\":\"snellen\"");
    Description description =
        describe(Stream.of(record, record.replace("unaided", "spectacles").replace("r-1", "r-2")));
    List<List<String>> acuities =
        rows(description, "How the numbers are spread").stream()
            .filter(row -> row.get(0).equals("distance-acuity") && row.get(1).equals("value"))
            .toList();
    assertEquals(
        List.of("spectacles", "unaided"), acuities.stream().map(row -> row.get(2)).toList());
    assertEquals("snellen", acuities.get(0).get(4));
    assertEquals(
        List.of("distance-acuity", "recorded", "2", "0"),
        rows(description, "How acuities and limits got their numbers").get(0));
    List<String> step =
        rows(description, "What was examined of the usual steps").stream()
            .filter(row -> row.get(0).equals("acuity"))
            .findFirst()
            .orElseThrow();
    assertEquals(List.of("acuity", "2", "0", "2"), step);
  }

  @Test
  void countsAgreeWithThePool() throws IOException {
    List<PoolDocument> documents = new ArrayList<>();
    new Cohort(30, 8)
        .exams()
        .forEach(
            exam ->
                documents.add(
                    new PoolDocument(
                        "in",
                        documents.size() + 1L,
                        "in",
                        PoolDocument.Form.JSON,
                        line(exam).getBytes(UTF_8))));
    PoolResult pool;
    PoolReader reader = new PoolReader(Catalogue.standard(), Options.usual(), Release.R4);
    PoolPlan plan = PoolPlan.identified(folder.resolve("pool"));
    try (PoolRun run = PoolRun.begin(Catalogue.standard(), reader, plan)) {
      for (PoolDocument document : documents) {
        run.add(document);
      }
      pool = run.finish();
    }
    List<String> size = rows(Survey.of(folder.resolve("pool")), "How much there is").get(0);
    assertEquals(
        List.of(
            Long.toString(pool.counts().examinations()),
            Long.toString(pool.counts().facts()),
            Long.toString(pool.tables().findings())),
        List.of(size.get(1), size.get(2), size.get(4)));
  }

  @Test
  void aFolderWithoutAPoolIsRefused() {
    FaultException refused = assertThrows(FaultException.class, () -> Survey.of(folder));
    assertTrue(refused.getMessage().contains("pool the records first"), refused.getMessage());
  }

  private Description describe(Stream<String> lines) throws IOException {
    return describe(lines, PoolPlan.identified(folder.resolve("pool")));
  }

  private static PoolPlan plan(Path pool, TableFormat format) {
    return PoolPlan.identified(pool).in(List.of(format));
  }

  static Description describe(Stream<String> lines, PoolPlan plan) throws IOException {
    PoolReader reader = new PoolReader(Catalogue.standard(), Options.usual(), Release.R4);
    try (PoolRun run = PoolRun.begin(Catalogue.standard(), reader, plan)) {
      long number = 0;
      for (String line : lines.toList()) {
        number++;
        run.add(new PoolDocument("in", number, "in", PoolDocument.Form.JSON, line.getBytes(UTF_8)));
      }
      run.finish();
    }
    return Survey.of(plan.folder());
  }

  static String line(Exam exam) {
    return new RecordWriter().line(exam);
  }

  private static String pressure(int number, int mmHg) {
    return """
        {"isopter":1,"record":{"id":"r-%d"},"subject":{"id":"p-%d"},\
        "performed":"2026-03-03T09:10:00Z","status":"final","findings":{\
        "intraocular-pressure":{"right":{"value":"%d mmHg"}}}}"""
        .formatted(number, number, mmHg);
  }

  private static List<List<String>> rows(Description description, String title) {
    return listing(description, title).rows();
  }

  private static Listing listing(Description description, String title) {
    return description.listings().stream()
        .filter(one -> one.title().equals(title))
        .findFirst()
        .orElseThrow();
  }

  private static long sum(Description description, String title, String... columns) {
    Listing listing = listing(description, title);
    long sum = 0;
    for (List<String> row : listing.rows()) {
      for (String column : columns) {
        sum += Long.parseLong(row.get(listing.columns().indexOf(column)));
      }
    }
    return sum;
  }
}
