package org.isopter.mapper.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.NoteWriter;
import org.isopter.model.note.Unread;
import org.isopter.model.value.Result;

/** Any text as a note: what is not read is given back, and what is read reads the same again. */
public final class NoteFuzz {

  private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");
  private static final Header HEADER =
      Header.of(
          Identifier.of("exam-1"),
          new Party(Optional.of(Identifier.of("p-17")), Optional.empty()),
          WHEN);
  private static final NoteReader READER = NoteReader.performed(WHEN);
  private static final NoteWriter WRITER = NoteWriter.performed(WHEN);

  private NoteFuzz() {}

  /** Tries one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    String text = new String(input, UTF_8);
    Note note = READER.read(text);
    Refusals.check(note.strict().faults());
    for (Unread unread : note.unread()) {
      assertTrue(text.contains(unread.text()), unread::toString);
    }
    again(note.facts());
    kept(NoteReader.keepUnread(HEADER, text), note);
  }

  private static void kept(Result<Exam> kept, Note note) {
    Refusals.check(kept.faults());
    if (kept instanceof Result.Ok<Exam> ok) {
      assertEquals(new Exam(HEADER, note.facts()).facts(), ok.value().facts());
      assertEquals(note.unread().isEmpty(), ok.value().header().remark().isEmpty());
    } else {
      assertFalse(note.unread().isEmpty(), "refused, and yet all was read");
    }
  }

  private static void again(List<Fact<?>> facts) {
    if (WRITER.write(facts) instanceof Result.Ok<String> written) {
      assertEquals(Result.ok(facts), READER.facts(written.value()), written.value());
    }
  }
}
