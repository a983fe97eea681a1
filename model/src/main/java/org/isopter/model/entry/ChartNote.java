package org.isopter.model.entry;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.NoteWriter;
import org.isopter.model.text.Eyes;
import org.isopter.model.text.FactText;

/**
 * An examination in shorthand, short enough to paste into a chart.
 *
 * <p>Reading the text gives the same facts again; that is tried before it is given out. What
 * shorthand has no words for follows in plain words, and is not read.
 *
 * @param shorthand the items in shorthand, those of a step on one line; nothing where none can be
 *     said
 * @param words the facts that shorthand cannot say, a line each; nothing where it can say all
 */
public record ChartNote(String shorthand, List<String> words) {

  /** A reader of notes takes nothing of what stands below a line that speaks of another time. */
  private static final String NOT_READ = "Previously recorded, in words:\n";

  public ChartNote {
    words = List.copyOf(words);
  }

  /** Returns the note of an examination; its header is not in it. */
  public static ChartNote of(Exam exam) {
    OffsetDateTime day = exam.header().performed();
    NoteWriter writer = NoteWriter.performed(day);
    NoteReader reader = NoteReader.performed(day).withoutAdvice();
    List<Fact<?>> said = new ArrayList<>();
    List<Fact<?>> unsaid = new ArrayList<>();
    exam.facts().forEach(fact -> (isSaidBeside(said, fact, writer) ? said : unsaid).add(fact));
    List<String> words = words(unsaid, reader, day);
    return Stream.of(new ChartPacker(writer, reader).pack(said), writer.write(said).orThrow())
        .map(text -> new ChartNote(text, words))
        .filter(note -> note.reads(reader, said))
        .findFirst()
        .orElseGet(() -> new ChartNote("", words(exam.facts(), reader, day)));
  }

  private static boolean isSaidBeside(List<Fact<?>> said, Fact<?> fact, NoteWriter writer) {
    return writer.write(Stream.concat(said.stream(), Stream.of(fact)).toList()).isOk();
  }

  private static List<String> words(
      List<Fact<?>> facts, NoteReader reader, OffsetDateTime performed) {
    return facts.stream().map(fact -> unread(fact, reader, performed)).toList();
  }

  /**
   * Returns a fact in words. Where those might be read, since a remark speaks of now or of another
   * eye, only what was examined is named.
   */
  private static String unread(Fact<?> fact, NoteReader reader, OffsetDateTime performed) {
    String eyes = Eyes.of(fact.finding(), fact.site()).words();
    String title = eyes.isEmpty() ? fact.finding().title() : eyes + ", " + fact.finding().title();
    String words = (title + ": " + FactText.of(fact, performed)).replace('\n', ' ');
    return reader.read(NOT_READ + words).facts().isEmpty() ? words : title + ": see the record";
  }

  private boolean reads(NoteReader reader, List<Fact<?>> said) {
    Set<Fact<?>> wanted = Set.copyOf(said);
    return reader.read(shorthand).unread().isEmpty()
        && wanted.equals(Set.copyOf(reader.read(text()).facts()));
  }

  /** Returns the whole text. */
  public String text() {
    return words.isEmpty() ? shorthand : shorthand + NOT_READ + String.join("\n", words) + "\n";
  }
}
