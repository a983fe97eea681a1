package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Measurement;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.junit.jupiter.api.Test;

/**
 * A note that lost a word, named one eye for the other, got a foreign unit or was cut off gives the
 * same facts, fewer, a question or a refusal, and never another value of what it said.
 *
 * <p>{@code -Dnotes.harmed=5000} harms more of them; {@code -Dseed=…} others.
 */
class HarmedNotesTest {

  private static final int COUNT = Integer.getInteger("notes.harmed", 200);
  private static final Set<String> PALE = Set.of("pale", "temporally-pale", "temporal-pallor");
  private static final long SEED = Long.getLong("seed", 20260302L);

  @Test
  void neverSayAnotherValue() throws IOException {
    List<String> notes = notes();
    Random random = new Random(SEED);
    List<String> other = new ArrayList<>();
    for (int i = 0; i < COUNT; i++) {
      String note = notes.get(random.nextInt(notes.size()));
      String harmed = harm(note, random);
      List<Fact<?>> before = Notes.READER.read(note).facts();
      for (Fact<?> fact : Notes.READER.read(harmed).facts()) {
        if (isOther(fact, before)) {
          other.add(note + "\n--> " + harmed + "\n    " + FactLines.of(fact));
        }
      }
    }
    assertEquals("", String.join("\n\n", other), "seed " + SEED);
  }

  /** Says whether the eye has this finding in the note, and only with other values. */
  private static boolean isOther(Fact<?> fact, List<Fact<?>> before) {
    List<Fact<?>> same =
        before.stream()
            .filter(one -> isOfOneMeasurement(one, fact))
            .filter(one -> one.panel().isPresent() && fact.panel().isPresent())
            .toList();
    return !same.isEmpty() && same.stream().noneMatch(one -> agree(one, fact));
  }

  private static boolean isOfOneMeasurement(Fact<?> one, Fact<?> other) {
    return one.finding() == other.finding()
        && one.site() == other.site()
        && Measurement.of(one)
            .anyTechnique()
            .anyTime()
            .equals(Measurement.of(other).anyTechnique().anyTime());
  }

  /** What both tell must be alike; one may tell less. */
  private static boolean agree(Fact<?> one, Fact<?> other) {
    EncodedValue first = one.panel().orElseThrow();
    EncodedValue second = other.panel().orElseThrow();
    return (first.value().equals(second.value()) || arePallor(first, second))
        && second.parts().entrySet().stream()
            .filter(part -> first.parts().containsKey(part.getKey()))
            .allMatch(part -> part.getValue().equals(first.parts().get(part.getKey())));
  }

  /** A disc whose temporal pallor lost its first word is a pale one, which it is as well. */
  private static boolean arePallor(EncodedValue first, EncodedValue second) {
    return Stream.of(first, second)
        .allMatch(one -> one.value().map(DatumTexts::of).filter(PALE::contains).isPresent());
  }

  private static String harm(String note, Random random) {
    List<Token> tokens =
        Lexer.read(note).stream().filter(token -> token.kind() != Token.Kind.BREAK).toList();
    Token token = tokens.get(random.nextInt(tokens.size()));
    String before = note.substring(0, token.start());
    String after = note.substring(token.end());
    return switch (random.nextInt(4)) {
      case 0 -> mayGo(token) ? before + after : note;
      case 1 -> Mutator.oneEyeTwice(note).orElse(note);
      case 2 -> token.kind() == Token.Kind.NUMBER ? before + token.seen() + " kPa" + after : note;
      default -> before;
    };
  }

  /** Without its "not" a note says the opposite, and nothing in it shows that. */
  private static boolean mayGo(Token token) {
    return token.kind() == Token.Kind.WORD && !WordFiles.is(WordRole.NO, token.text());
  }

  private static List<String> notes() throws IOException {
    List<String> notes = new ArrayList<>();
    for (Path file : Notes.all()) {
      notes.add(Notes.read(file));
    }
    Path voices = Path.of("src/test/resources/voices/notes.txt");
    Stream.of(Files.readString(voices, StandardCharsets.UTF_8).strip().split("\n\n---\n\n"))
        .map(block -> block.split("\n=>\n", 2)[0])
        .forEach(notes::add);
    return notes;
  }
}
