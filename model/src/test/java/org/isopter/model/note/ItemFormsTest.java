package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Forms in which one thing is written by many hands: each gives the same facts as the first.
 *
 * <p>That the forms mean the same is common practice, no source.
 */
class ItemFormsTest {

  private static final Path FORMS = Path.of("src/test/resources/forms/forms.txt");

  @TestFactory
  Stream<DynamicTest> meanTheSame() throws IOException {
    return blocks().stream().map(b -> DynamicTest.dynamicTest(b.get(0), () -> check(b)));
  }

  @Test
  void areMoreThanAThousand() throws IOException {
    int forms = blocks().stream().mapToInt(List::size).sum();
    assertTrue(forms > 1000, "only " + forms);
  }

  private static void check(List<String> forms) {
    Set<Fact<?>> first = facts(forms.get(0));
    forms.forEach(form -> assertEquals(first, facts(form), form));
  }

  private static Set<Fact<?>> facts(String form) {
    Note note = Notes.READER.read(form);
    assertEquals(List.of(), note.unread(), form);
    return new HashSet<>(note.facts());
  }

  private static List<List<String>> blocks() throws IOException {
    String text = Files.readString(FORMS, StandardCharsets.UTF_8);
    return Stream.of(text.strip().split("\n\n"))
        .map(block -> Stream.of(block.split("\n")).map(String::strip).toList())
        .toList();
  }
}
