package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.junit.jupiter.api.Test;

/** A note that came to harm gives the same facts or a refusal, and never another meaning. */
class MutatedNotesTest {

  private record Harm(String before, String after) {}

  @Test
  void neverMeanSomethingElse() throws IOException {
    List<Harm> corpus = corpus();
    int refused = 0;
    for (Harm harm : corpus) {
      Note before = Notes.READER.read(harm.before());
      Note after = Notes.READER.read(harm.after());
      Set<Fact<?>> added = new HashSet<>(after.facts());
      added.removeAll(reported(harm.before()));
      assertEquals(Set.of(), added, harm::after);
      boolean same = new HashSet<>(before.facts()).equals(new HashSet<>(after.facts()));
      assertTrue(same || !after.unread().isEmpty(), harm::after);
      refused += same ? 0 : 1;
    }
    assertEquals(200, corpus.size());
    assertTrue(refused > 130, "only " + refused + " of the corpus did any harm");
  }

  @Test
  void areRefusedWhenOneEyeIsNamedForTheOther() throws IOException {
    int tried = 0;
    for (Path file : Notes.all()) {
      String before = Notes.read(file);
      String after = Mutator.oneEyeTwice(before).orElse(before);
      if (!after.equals(before)) {
        assertFalse(Notes.READER.read(after).unread().isEmpty(), after);
        tried++;
      }
    }
    assertTrue(tried > 20, "only " + tried + " notes name both eyes in an item");
  }

  @Test
  void meanTheSameInOtherCaseAndOtherSpace() throws IOException {
    for (Path file : Notes.all()) {
      String note = Notes.read(file);
      List<String> facts = lines(note);
      Stream.of(
              note.toUpperCase(Locale.ROOT),
              note.toLowerCase(Locale.ROOT),
              note.replace("\n", "\r\n"),
              note.replace(" ", "  ").replace(";", " ; "))
          .forEach(other -> assertEquals(facts, lines(other), other));
    }
  }

  /** Returns the facts in lines; a remark keeps the case in which it was written. */
  private static List<String> lines(String note) {
    return Notes.READER.read(note).facts().stream()
        .map(fact -> FactLines.of(fact).toLowerCase(Locale.ROOT))
        .toList();
  }

  /** Returns five harmed notes for each golden note, the same ones every time. */
  private static List<Harm> corpus() throws IOException {
    List<Harm> corpus = new ArrayList<>();
    List<Mutator> mutators = List.of(Mutator.values());
    for (Path file : Notes.all()) {
      String note = Notes.read(file);
      int wanted = corpus.size() + 5;
      for (int turn = corpus.size() / 5; corpus.size() < wanted; turn++) {
        Mutator mutator = mutators.get(turn % mutators.size());
        mutator.harm(note, turn).ifPresent(harmed -> corpus.add(new Harm(note, harmed)));
      }
    }
    return corpus;
  }

  /** Returns what a note tells, what a contradiction hides included. */
  private static Set<Fact<?>> reported(String note) {
    Set<Fact<?>> reported = new HashSet<>(Notes.READER.read(note).facts());
    note.lines().forEach(line -> reported.addAll(Notes.READER.read(line).facts()));
    return reported;
  }
}
