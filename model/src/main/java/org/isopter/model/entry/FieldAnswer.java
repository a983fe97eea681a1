package org.isopter.model.entry;

import java.time.OffsetDateTime;
import java.util.List;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.text.FactText;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Site;

/**
 * What one field of a sheet says.
 *
 * @param site the eye, or both together
 * @param note the words of the field with the eye and the heading before them, as a note has them
 * @param facts what is recorded of it; nothing unless all of it was understood
 * @param unread what was not understood
 * @param foreign what speaks of another eye than that of the field
 */
@API(status = Status.INTERNAL)
public record FieldAnswer(
    Site site, String note, List<Fact<?>> facts, List<Unread> unread, List<Fact<?>> foreign) {

  /** Reads a field of an eye, or of both together. */
  public static FieldAnswer read(NoteReader reader, EntryField row, Site site, String words) {
    String line = words.strip().replace('\n', ' ');
    String eye = row.perEye() ? (site == Site.RIGHT ? "R: " : "L: ") : "";
    List<FieldAnswer> tries =
        HeadedAnswer.ways(reader, eye, row.heading(), line).stream()
            .map(way -> of(way, row, site))
            .toList();
    return tries.stream().filter(FieldAnswer::isClear).findFirst().orElse(tries.get(0));
  }

  private static FieldAnswer of(HeadedAnswer answer, EntryField row, Site site) {
    Note note = answer.note();
    List<Fact<?>> foreign = note.facts().stream().filter(fact -> !isOf(site, fact)).toList();
    boolean clear = answer.isClear() && foreign.isEmpty() && !answer.isStray(row.heading());
    return new FieldAnswer(
        site, answer.text(), clear ? note.facts() : List.of(), note.unread(), foreign);
  }

  /** Returns what the word for normal records in a row, on any day; empty where it has none. */
  public static List<String> normal(EntryField row, OffsetDateTime day) {
    return row.hasNormal()
        ? read(NoteReader.performed(day), row, row.sites().get(0), row.normal()).lines(day)
        : List.of();
  }

  /** A field of both eyes may also name one of them, where that is said of both together too. */
  private static boolean isOf(Site site, Fact<?> fact) {
    return site == Site.BOTH ? fact.finding().sites().contains(site) : fact.site() == site;
  }

  /** Says whether all of it was understood, and of the eye that the field is for. */
  public boolean isClear() {
    return !facts.isEmpty();
  }

  /** Returns what is recorded in words, a line for each fact. */
  public List<String> lines(OffsetDateTime day) {
    return facts.stream()
        .map(fact -> eye(fact) + fact.finding().title() + ": " + FactText.of(fact, day))
        .toList();
  }

  private String eye(Fact<?> fact) {
    return fact.site() == site ? "" : PlainWords.capital(fact.site().word()) + " eye. ";
  }
}
