package org.isopter.task.note;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.note.habit.PossibleReading;
import org.isopter.task.io.Dialogue;
import org.isopter.task.io.Streams;

/** Asks at the terminal what the unclear items of a note mean, by numbers, in plain lines. */
final class Asking {

  private final Streams streams;
  private final NoteReader reader;

  private Asking(Streams streams, NoteReader reader) {
    this.streams = streams;
    this.reader = reader;
  }

  static Asking on(Streams streams, NoteReader reader) {
    return new Asking(streams, reader);
  }

  /**
   * Returns the note with each answered item in the form that was chosen; nobody is disturbed where
   * nothing is unclear.
   */
  String about(String note) throws IOException {
    Set<String> asked = new HashSet<>();
    Optional<Unread> next = next(reader.read(note), asked);
    if (next.isEmpty()) {
      return note;
    }
    String text = note;
    try (Dialogue dialogue = streams.dialogue()) {
      while (next.isPresent()) {
        asked.add(next.get().text());
        text = answered(text, next.get(), dialogue);
        next = next(reader.read(text), asked);
      }
    }
    return text;
  }

  private static Optional<Unread> next(Note note, Set<String> asked) {
    return Questions.of(note).stream().filter(unread -> !asked.contains(unread.text())).findFirst();
  }

  private String answered(String text, Unread unread, Dialogue dialogue) throws IOException {
    List<PossibleReading> readings = unread.readings();
    dialogue.say("\"" + unread.text() + "\": " + unread.why());
    for (int i = 0; i < readings.size(); i++) {
      dialogue.say("  " + (i + 1) + " = " + readings.get(i).text());
    }
    int choice = choice(dialogue, readings.size());
    return choice > 0 ? NoteReader.answered(text, unread, readings.get(choice - 1)) : text;
  }

  /** Returns the number that was typed, asking again for one that is none; 0 for none of them. */
  private static int choice(Dialogue dialogue, int highest) throws IOException {
    while (true) {
      String typed = dialogue.ask("number, or nothing to leave it unread").orElse("").strip();
      if (typed.isEmpty()) {
        return 0;
      }
      if (typed.matches("\\d{1,2}")
          && Integer.parseInt(typed) > 0
          && Integer.parseInt(typed) <= highest) {
        return Integer.parseInt(typed);
      }
      dialogue.say("  not one of the numbers: 1 to " + highest);
    }
  }
}
