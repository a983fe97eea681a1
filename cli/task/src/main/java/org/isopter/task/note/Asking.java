package org.isopter.task.note;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.note.habit.Reading;
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

  /** Returns the note with each answered item in the form that was chosen. */
  String about(String note) throws IOException {
    BufferedReader lines = new BufferedReader(new InputStreamReader(streams.in(), UTF_8));
    Set<String> asked = new HashSet<>();
    String text = note;
    Optional<Unread> next = next(reader.read(text), asked);
    while (next.isPresent()) {
      asked.add(next.get().text());
      text = answered(text, next.get(), lines);
      next = next(reader.read(text), asked);
    }
    return text;
  }

  private static Optional<Unread> next(Note note, Set<String> asked) {
    return Questions.of(note).stream().filter(unread -> !asked.contains(unread.text())).findFirst();
  }

  private String answered(String text, Unread unread, BufferedReader lines) throws IOException {
    List<Reading> readings = unread.readings();
    streams.err().println("\"" + unread.text() + "\": " + unread.why());
    for (int i = 0; i < readings.size(); i++) {
      streams.err().println("  " + (i + 1) + " = " + readings.get(i).text());
    }
    streams.err().print("number, or nothing to leave it unread: ");
    streams.err().flush();
    String line = lines.readLine();
    boolean number = line != null && line.strip().matches("[1-9]");
    int choice = number ? Integer.parseInt(line.strip()) : 0;
    return choice > 0 && choice <= readings.size()
        ? NoteReader.answered(text, unread, readings.get(choice - 1))
        : text;
  }
}
