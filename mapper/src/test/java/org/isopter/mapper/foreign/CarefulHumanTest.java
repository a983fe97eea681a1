package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.Raw;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Outcome;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a careful human takes from each file: eye, value and notation, or the reason why not. The
 * rows were written from reading the files, not from running the reader. Files of our own have the
 * shapes that others publish; those that others published are read besides where they are here.
 */
class CarefulHumanTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @TestFactory
  Stream<DynamicTest> takesFromEachFileWhatAHumanTakes() {
    Stream<DynamicTest> published =
        Foreign.published().stream().flatMap(folder -> alone("taken-alone-published", folder));
    return Stream.concat(alone("taken-alone", Foreign.own()), published);
  }

  private static Stream<DynamicTest> alone(String table, Path folder) {
    return Foreign.table(table).stream()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    row.get(0),
                    () -> {
                      String json = Foreign.text(folder.resolve(row.get(0) + ".json"));
                      Reading reading = READER.read(json).orThrow();
                      assertEquals(row.get(1), said(reading.resources().get(0)));
                    }));
  }

  @Test
  void hasARowForEveryFileOfOurOwnThatIsReadAlone() {
    Path folder = Foreign.own().resolve("alone");
    Set<String> rows = new TreeSet<>();
    Foreign.table("taken-alone").forEach(row -> rows.add(row.get(0)));
    rows.removeIf(name -> !name.startsWith("alone/"));
    Set<String> files = new TreeSet<>();
    Foreign.jsonFiles(folder)
        .forEach(file -> files.add("alone/" + file.getFileName().toString().replace(".json", "")));
    assertEquals(files, rows);
  }

  @ParameterizedTest
  @ValueSource(strings = {"acuity-by-fingers", "refraction-with-prism"})
  void takesFromTheXmlOfAFileWhatItTakesFromItsJson(String name) {
    Path folder = Foreign.own().resolve("alone");
    Reading json = READER.read(Foreign.text(folder.resolve(name + ".json"))).orThrow();
    assertEquals(said(json.resources().get(0)), said(xml(folder.resolve(name + ".xml"))));
  }

  @Test
  void takesFromThePublishedXmlWhatItTakesFromItsJson() {
    Foreign.published().stream()
        .flatMap(folder -> Foreign.jsonFiles(folder).stream())
        .forEach(
            file -> {
              Path xml = Path.of(file.toString().replace(".json", ".xml"));
              if (Files.exists(xml)) {
                Reading json = READER.read(Foreign.text(file)).orThrow();
                assertEquals(said(json.resources().get(0)), said(xml(xml)), xml.toString());
              }
            });
  }

  private static ReadResource xml(Path file) {
    byte[] bytes = Foreign.text(file).getBytes(UTF_8);
    return READER.read(bytes, Release.R4).orThrow().resources().get(0);
  }

  @Test
  void takesFromAFolderWhatAHumanTakesWhoSeesItWhole() {
    together("taken-together", Foreign.own().resolve("guide"));
    Foreign.published()
        .ifPresent(all -> together("taken-together-published", all.resolve("hl7-eyecare-ig")));
  }

  private static void together(String table, Path folder) {
    Map<String, String> wanted = new TreeMap<>();
    Foreign.table(table).forEach(row -> wanted.put(row.get(0), row.get(1)));
    Map<String, String> seen = new TreeMap<>();
    READER
        .readTogether(Foreign.documents(folder))
        .resources()
        .forEach(read -> seen.put(read.name(), said(read)));
    assertEquals(lines(wanted), lines(seen));
  }

  /** Acuities under two right codes, pressures whose second code stands under a wrong system. */
  @Test
  void readsSyntheticLinesCompletely() {
    for (Path file : Foreign.lineFiles()) {
      List<Raw> documents = Foreign.lines(file).stream().map(Foreign::raw).toList();
      Reading reading = READER.readTogether(documents);
      assertEquals(documents.size(), reading.count("translated"), file.toString());
      long wrong =
          reading.resources().stream()
              .map(read -> (ResourceOutcome.Translated) read.outcome())
              .filter(read -> read.rules().contains("code-wrong-system"))
              .count();
      assertEquals(documents.size() / 2, wrong, file.toString());
      assertEquals(
          documents.size(),
          reading.exams().stream().mapToInt(exam -> exam.exam().facts().size()).sum());
    }
  }

  /** Cases of another standard are no FHIR resources and come back as they are. */
  @Test
  void keepsWhatIsNoResource() {
    Path cases = Path.of("src", "test", "resources", "views");
    Stream<Path> published =
        Foreign.published().stream()
            .flatMap(folder -> Foreign.jsonFiles(folder.resolve("sql-on-fhir")).stream());
    Stream.concat(Foreign.jsonFiles(cases).stream(), published)
        .forEach(
            file -> {
              Reading reading = READER.read(Foreign.text(file)).orThrow();
              assertEquals("no-resource", said(reading.resources().get(0)), file.toString());
            });
  }

  private static String lines(Map<String, String> map) {
    StringBuilder lines = new StringBuilder();
    map.forEach((key, value) -> lines.append(key).append(": ").append(value).append('\n'));
    return lines.toString();
  }

  static String said(ReadResource read) {
    if (read.outcome() instanceof ResourceOutcome.Kept kept) {
      return kept.reasons().get(0).why().word();
    }
    List<String> facts = new ArrayList<>();
    read.outcome().facts().forEach(fact -> facts.add(said(fact)));
    return String.join("; ", facts);
  }

  static String said(Fact<?> fact) {
    StringBuilder text = new StringBuilder(fact.finding().id() + " " + fact.site().word());
    fact.panel().ifPresent(panel -> said(fact, panel, text));
    fact.outcome().ifAbsent().ifPresent(reason -> text.append(" absent ").append(reason.word()));
    fact.method().ifPresent(method -> text.append(" by ").append(method.word()));
    return text.toString();
  }

  private static void said(Fact<?> fact, EncodedValue panel, StringBuilder text) {
    if (panel.notation().isPresent()) {
      text.append(' ').append(fact.finding().layout().writeChoice(panel));
    } else {
      panel.value().ifPresent(value -> text.append(' ').append(DatumTexts.of(value)));
    }
    List<String> own = List.of("shown-at", "letters");
    new TreeMap<>(panel.parts())
        .forEach(
            (key, part) -> {
              if (!own.contains(key)) {
                text.append(' ').append(key).append('=').append(said(part));
              }
            });
  }

  private static String said(Outcome<org.isopter.model.finding.Datum> part) {
    return part.fold(DatumTexts::of, reason -> "absent " + reason.word());
  }
}
