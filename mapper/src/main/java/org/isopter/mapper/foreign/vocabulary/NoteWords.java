package org.isopter.mapper.foreign.vocabulary;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * The words that have a meaning in some table or in a file of phrases: those that deny, doubt, name
 * a side, a person, a test or an answer. A department cannot have them passed over in notes.
 */
final class NoteWords {

  /** Shorter words are abbreviations, and stand for something. */
  private static final Pattern WORD = Pattern.compile("\\p{L}{4,}");

  private NoteWords() {}

  /** Returns true if a phrase is one word, and has no meaning yet. */
  static boolean isFree(String phrase) {
    String word = CodeText.words(phrase);
    return WORD.matcher(word).matches() && !Holder.MEANT.contains(word);
  }

  /** Holds the words; they are gathered when they are first asked for. */
  private static final class Holder {
    static final Set<String> MEANT = meant();

    private static Set<String> meant() {
      Set<String> meant = new HashSet<>();
      ((Raw.Obj) Habits.load("habits.json")).members().values().forEach(row -> gather(row, meant));
      EnumSet.complementOf(EnumSet.of(WordRole.PASS)).stream()
          .flatMap(role -> WordFiles.of(role).stream())
          .forEach(phrase -> add(phrase, meant));
      return meant;
    }

    private static void gather(Raw table, Set<String> into) {
      if (table instanceof Raw.Arr list) {
        list.items().forEach(item -> gather(item, into));
      } else {
        table.list("spellings").forEach(text -> gather(text, into));
        table.string().ifPresent(text -> add(text, into));
      }
    }

    private static void add(String phrase, Set<String> into) {
      into.addAll(List.of(CodeText.words(phrase).split(" ", -1)));
    }
  }
}
