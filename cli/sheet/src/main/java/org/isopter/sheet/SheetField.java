package org.isopter.sheet;

import java.util.List;
import org.isopter.model.entry.EntryField;
import org.isopter.model.entry.HeadedAnswer;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.note.Unread;
import org.isopter.model.value.Site;

/**
 * What one field of the sheet says.
 *
 * @param site the eye, or both together
 * @param note the words of the field with the eye and the heading before them, as a note has them
 * @param facts what is recorded of it; nothing unless all of it was understood
 * @param unread what was not understood
 * @param foreign what speaks of another eye than that of the field
 */
record SheetField(
    Site site, String note, List<Fact<?>> facts, List<Unread> unread, List<Fact<?>> foreign) {

  /** Reads a field of an eye, or of both together. */
  static SheetField read(NoteReader reader, EntryField row, Site site, String words) {
    String line = words.strip().replace('\n', ' ');
    String eye = row.perEye() ? (site == Site.RIGHT ? "R: " : "L: ") : "";
    List<SheetField> tries =
        HeadedAnswer.ways(reader, eye, row.heading(), line).stream()
            .map(way -> of(way, row, site))
            .toList();
    return tries.stream().filter(SheetField::isClear).findFirst().orElse(tries.get(0));
  }

  private static SheetField of(HeadedAnswer answer, EntryField row, Site site) {
    Note note = answer.note();
    List<Fact<?>> foreign = note.facts().stream().filter(fact -> !isOf(site, fact)).toList();
    boolean clear = answer.isClear() && foreign.isEmpty() && !answer.isStray(row.heading());
    return new SheetField(
        site, answer.text(), clear ? note.facts() : List.of(), note.unread(), foreign);
  }

  /** A field of both eyes may also name one of them, where that is said of both together too. */
  private static boolean isOf(Site site, Fact<?> fact) {
    return site == Site.BOTH ? fact.finding().sites().contains(site) : fact.site() == site;
  }

  /** Says whether all of it was understood, and of the eye that the field is for. */
  boolean isClear() {
    return !facts.isEmpty();
  }
}
