package org.isopter.model.note.habit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseFile;
import org.isopter.model.phrase.PhraseLine;
import org.junit.jupiter.api.Test;

/** The phrases that come with the library, and those of a department. */
class StandardPhrasesTest {

  @Test
  void meanOneThingInOneLanguage() {
    Map<String, String> meanings = new HashMap<>();
    List<String> twice = new ArrayList<>();
    for (PhraseLine line : WordFiles.lines(WordRole.SAY)) {
      for (String phrase : line.phrases()) {
        String before = meanings.putIfAbsent(line.language() + " " + phrase, line.meaning());
        if (before != null && !before.equals(line.meaning())) {
          twice.add(phrase);
        }
      }
    }
    assertEquals(List.of(), twice);
  }

  @Test
  void readAsTheirMeaningWhereThatIsAnItem() {
    List<String> other = new ArrayList<>();
    for (PhraseLine line : WordFiles.lines(WordRole.SAY)) {
      Note meant = NoteReader.standard().read(line.meaning());
      if (!meant.facts().isEmpty() && meant.unread().isEmpty()) {
        line.phrases().stream()
            .map(PhraseRow::bare)
            .filter(phrase -> !reads(phrase, meant))
            .forEach(other::add);
      }
    }
    assertEquals(List.of(), other);
  }

  private static boolean reads(String phrase, Note meant) {
    Note note = NoteReader.standard().read(phrase);
    return note.unread().isEmpty() && note.facts().equals(meant.facts());
  }

  @Test
  void neverPassOverAWordOfAnotherPersonOrTime() {
    Set<String> passed = new HashSet<>(WordFiles.of(WordRole.PASS));
    List.of(WordRole.values()).stream()
        .filter(role -> role.isOpen() || role == WordRole.NO || role == WordRole.LIST_NO)
        .forEach(role -> assertTrue(Collections.disjoint(passed, WordFiles.of(role)), role.word()));
    assertEquals(List.of(), NoteReader.standard().read("Her son has RAPD L").facts());
  }

  @Test
  void areManyAndNameTheirSource() {
    List<PhraseLine> lines =
        List.of(WordRole.values()).stream()
            .flatMap(role -> WordFiles.lines(role).stream())
            .toList();
    long phrases = lines.stream().mapToLong(line -> line.phrases().size()).sum();
    assertTrue(phrases > 1000, "only " + phrases);
    assertTrue(lines.stream().noneMatch(line -> line.source().isBlank()));
  }

  @Test
  void areExtendedByADepartment() {
    Habits habits = Habits.read("say\tIOP\tnl\toogdruk\tlocal practice\n").orThrow();
    assertEquals(
        NoteReader.standard().facts("IOP R 14"),
        NoteReader.standard().habits(habits).facts("Oogdruk R 14"));
    assertFalse(NoteReader.standard().facts("Oogdruk R 14").isOk());
  }

  @Test
  void giveFormsTheMeaningThatADepartmentStates() {
    Habits habits = Habits.read("habit\teyes\t-\tright then left\tlocal practice\n").orThrow();
    assertEquals(
        NoteReader.standard().facts("IOP R 14 L 16"),
        NoteReader.standard().habits(habits).facts("IOP 14/16"));
    assertFalse(NoteReader.standard().facts("IOP 14/16").isOk());
  }

  @Test
  void areRefusedWithTheirLineWhereTheyAreWrong() {
    String file =
        "say\tfrobnicate\tnl\toogdruk\tlocal\nhabit\teyes\t-\tsideways\tlocal\nwish\ta\tb\tc\td\n";
    assertEquals(
        List.of("line 1", "line 2", "line 3"),
        Habits.read(file).faults().stream().map(fault -> fault.path()).toList());
    assertEquals("line 2", PhraseFile.read("# a\nsay\tIOP\n").faults().get(0).path());
  }

  @Test
  void keepWhatADepartmentPutsIntoAnotherTime() {
    String note = "controle vorig jaar: IOP R 14";
    Habits habits = Habits.read("other\tanother time\tnl\tvorig jaar\tlocal\n").orThrow();
    Unread unread = NoteReader.standard().habits(habits).read(note).unread().get(0);
    assertTrue(unread.why().contains("another time"), unread.why());
    assertEquals(
        List.of(), NoteReader.standard().habits(habits).read("vorig jaar IOP R 14").facts());
    assertEquals(List.of("line 1"), paths("pass\tnothing\tnl\tgeen\tlocal\n"));
  }

  @Test
  void askAboutWordsThatADepartmentCallsUnclear() {
    String asked = "ask\tplates\tnl\tkleurentest\tlocal\n";
    Habits habits = Habits.read(asked).orThrow();
    Unread unread =
        NoteReader.standard().habits(habits).read("kleurentest R 12/17").unread().get(0);
    assertTrue(unread.isQuestion(), unread.toString());
    assertFalse(NoteReader.standard().read("kleurentest R 12/17").unread().get(0).isQuestion());
    assertEquals(List.of("line 1"), paths("ask\tcolour\tnl\tkleurentest\tlocal\n"));
  }

  @Test
  void areNotGivenTheMeaningOfTheOtherEyeOrOfItsOpposite() {
    for (String wrong :
        List.of(
            "L\ten\tright",
            "IOP L\tfr\ttonus droit",
            "R\t-\tTL | OS",
            "OU\ten\tright",
            "no\ten\tpositive",
            "absent\ten\tpresent",
            "present\tde\tkein",
            "IOP\ten\t|")) {
      assertEquals(List.of("line 1"), paths("say\t" + wrong + "\tlocal\n"), wrong);
    }
    for (String right :
        List.of(
            "L\tnl\tlinkeroog",
            "IOP R\ten\ttension right",
            "each\ten\tR plus L",
            "BEO\ten\tboth open",
            "no RAPD\ten\tMG negative",
            "no RAPD\ten\tpupils normal Q",
            "normal\ten\tno abnormality",
            "absent\ten\tnone seen")) {
      assertEquals(List.of(), paths("say\t" + right + "\tlocal\n"), right);
    }
  }

  private static List<String> paths(String file) {
    return Habits.read(file).faults().stream().map(fault -> fault.path()).toList();
  }

  @Test
  void offersReadingsThatAreRead() {
    Unread unread = NoteReader.standard().read("IOP 14/16").unread().get(0);
    assertTrue(unread.isQuestion());
    for (PossibleReading reading : unread.readings()) {
      assertTrue(NoteReader.standard().facts(reading.text()).isOk(), reading.text());
    }
    assertEquals(
        "IOP R 14 L 16; no RAPD",
        NoteReader.answered("IOP 14/16; no RAPD", unread, unread.readings().get(0)));
  }
}
