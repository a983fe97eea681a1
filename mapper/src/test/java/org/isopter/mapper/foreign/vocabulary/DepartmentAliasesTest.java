package org.isopter.mapper.foreign.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.isopter.mapper.foreign.Foreign;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The lines of a department about FHIR; all codes and words are invented. */
class DepartmentAliasesTest {

  private static final Path FOLDER = Path.of("src", "test", "resources", "foreign");
  private static final ForeignReader PLAIN =
      new ForeignReader(Catalogue.standard(), Options.usual());

  /** Each resource without the file is kept, so that the line alone makes it readable. */
  @Test
  void readsWhatEachLineMeansAndNamesTheLine() throws IOException {
    for (Raw row : Foreign.cases("department").toList()) {
      String json = ForeignRules.whole(row.get("given").orElseThrow());
      String line = RawJson.write(row.get("line").orElseThrow());
      assertInstanceOf(ResourceOutcome.Kept.class, outcome(PLAIN, json), json);
      Set<String> rules = rules(json);
      assertTrue(rules.contains("habits-line-" + line), json + rules);
    }
  }

  @Test
  void namesNoLineThatWasNotUsed() throws IOException {
    String spelt = "{\"valueQuantity\":{\"unit\":\"mm Hg\",\"system\":null,\"code\":null}}";
    Set<String> rules = rules(ForeignRules.whole(RawJson.OWN.read(spelt).orThrow()));
    assertTrue(rules.stream().noneMatch(rule -> rule.startsWith("habits-line")), rules.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '`',
      value = {
        "code moon;https://a.example#1;moon",
        "code intraocular-pressure;words;words",
        "code intraocular-pressure up;https://a.example#1;up",
        "code intraocular-pressure;http://snomed.info/sct#251739003;251739003",
        "name intraocular-pressure;visual acuity;visual acuity",
        "part moon;disc;moon",
        "condition correction moon;x;correction moon",
        "method moon;x;moon",
        "unit moon;x;moon",
        "unit mm[Hg];kPa;kPa",
        "notation moon;x;moon as",
        "answer presence moon;x;presence moon",
        "eye up;https://a.example#1;up",
        "harmless moon;x;moon",
        "note;not;not",
        "note;niemals;niemals",
        "note;left;left",
        "note;links;links",
        "note;izquierdo;izquierdo",
        "note;target;target",
        "note;unreliable;unreliable",
        "note;estimated;estimated",
        "note;brother;brother",
        "note;pinhole;pinhole",
        "note;glasses;glasses",
        "note;yesterday;yesterday",
        "note;two words;two words",
        "note;https://a.example#1;1",
        "note;xy;xy",
        "note;2019;2019",
        "moon;x;moon"
      })
  void saysWhatIsWrongWithALine(String meaning, String phrase, String seen) {
    Result<DepartmentAliases> read = aliases(line(meaning, phrase));
    assertEquals(1, read.faults().size(), read.faults().toString());
    assertEquals("line 1", read.faults().get(0).path());
    assertTrue(read.faults().get(0).seen().contains(seen), read.faults().toString());
  }

  @Test
  void refusesTwoMeaningsOfOnePhrase() {
    assertTrue(aliases(line("unit mm[Hg]", "torr")).isOk());
    String both = line("unit mm[Hg]", "torr") + line("unit kPa", "torr");
    assertEquals(1, aliases(both).faults().size());
  }

  /** A word of notes changes nothing in a code, and does not help a note with another word. */
  @Test
  void passesOverAWordOfNotesInNotesAlone() throws IOException {
    DepartmentAliases aliases = aliases(line("note", "wheelchair")).orThrow();
    ForeignReader reader =
        new ForeignReader(Catalogue.standard(), Options.usual().aliases(aliases));
    for (String kept :
        new String[] {
          "{\"code\":{\"text\":\"IOP wheelchair\"}}",
          "{\"note\":[{\"text\":\"no wheelchair\"}]}",
          "{\"note\":[{\"text\":\"wheelchair?\"}]}",
          "{\"note\":[{\"text\":\"wheelchair of the left eye\"}]}",
          "{\"note\":[{\"text\":\"wheelchairs\"}]}"
        }) {
      String json = ForeignRules.whole(RawJson.OWN.read(kept).orThrow());
      assertInstanceOf(ResourceOutcome.Kept.class, outcome(reader, json), json);
    }
  }

  @Test
  void tellsOtherAliasesApart() {
    String one = aliases(line("unit mm[Hg]", "torr")).orThrow().digest();
    assertEquals(one, aliases(line("unit mm[Hg]", "torr")).orThrow().digest());
    assertNotEquals(one, aliases(line("unit mm[Hg]", "hg")).orThrow().digest());
    assertEquals("none", DepartmentAliases.none().digest());
  }

  private static String line(String meaning, String phrase) {
    return "fhir\t" + meaning + "\t-\t" + phrase + "\tcommon practice, no source\n";
  }

  private static Set<String> rules(String json) throws IOException {
    DepartmentAliases aliases =
        aliases(Files.readString(FOLDER.resolve("department.tsv"))).orThrow();
    ForeignReader reader =
        new ForeignReader(Catalogue.standard(), Options.usual().aliases(aliases));
    ResourceOutcome outcome = outcome(reader, json);
    assertInstanceOf(ResourceOutcome.Translated.class, outcome, json + outcome);
    return Set.copyOf(((ResourceOutcome.Translated) outcome).rules());
  }

  private static ResourceOutcome outcome(ForeignReader reader, String json) {
    return reader.read(json).orThrow().resources().get(0).outcome();
  }

  private static Result<DepartmentAliases> aliases(String text) {
    return DepartmentAliases.of(Habits.read(text).orThrow().fhir(), Catalogue.standard());
  }
}
