package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseLine;

/** The words of the files of phrases that may mean one of several things. */
final class UnclearWords {

  /** What is not clear of a word. */
  enum Doubt {
    /** Whether both eyes were tested together. */
    BOTH("both"),
    /** Whether a "no" before it reaches it. */
    DENIAL("denial"),
    /** With which plates was tested. */
    PLATES("plates"),
    /** How deep a loss is. */
    LOSS("loss"),
    /** How deep the hole in the middle of a field is. */
    CENTRE("centre"),
    /** Whether a share of red is left or lost. */
    RED("red"),
    /** How much of a margin is blurred. */
    MARGIN("margin"),
    /** With one eye or with both. */
    DIPLOPIA("diplopia"),
    /** Whether a half is lost to both eyes, and if to one of them which half it is. */
    HALF("half"),
    /** Which eyes it is of. */
    EYES("eyes"),
    /** What joins the values of two eyes. */
    JOINT("joint");

    private final String word;

    Doubt(String word) {
      this.word = word;
    }

    static Optional<Doubt> of(String word) {
      return List.of(values()).stream().filter(doubt -> doubt.word.equals(word)).findFirst();
    }
  }

  static final UnclearWords STANDARD = with(List.of());

  private static final String NUMBER = "((?<![\\d.])(?:\\d*\\.)?\\d+)";

  private static final String ACUITY = "(\\d+(?:\\.\\d+)?/\\d+(?:[+-]\\d)?)";

  private final Map<Doubt, Pattern> patterns = new EnumMap<>(Doubt.class);
  private final List<Pattern> pairs;

  private UnclearWords(Collection<PhraseLine> lines) {
    for (Doubt doubt : Doubt.values()) {
      String any = any(lines.stream().filter(line -> isAbout(line, doubt)).toList());
      patterns.put(
          doubt,
          Pattern.compile(
              "(?<![\\p{L}\\d])(?:" + any + ")(?![\\p{L}\\d])",
              Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE));
    }
    String joints = any(lines.stream().filter(line -> isAbout(line, Doubt.JOINT)).toList());
    pairs =
        List.of(
            Pattern.compile(ACUITY + "\\s*(?:[,;/&]|" + joints + ")?\\s+" + ACUITY),
            Pattern.compile(
                NUMBER + "(?:\\s*(?:[/,&]|" + joints + ")\\s*|\\s+)" + NUMBER + "(?![/\\d])"));
  }

  /** Returns the words of the library and those of a department. */
  static UnclearWords with(List<PhraseLine> own) {
    List<PhraseLine> lines = new ArrayList<>(own);
    lines.addAll(WordFiles.lines(WordRole.ASK));
    lines.addAll(WordFiles.lines(WordRole.SAY));
    return new UnclearWords(lines);
  }

  /** Returns the names of what may not be clear, for a message. */
  static String doubts() {
    return List.of(Doubt.values()).stream()
        .map(doubt -> doubt.word)
        .collect(Collectors.joining(", "));
  }

  Pattern of(Doubt doubt) {
    return Objects.requireNonNull(patterns.get(doubt));
  }

  /** Returns the patterns of two values without sides: of acuities, and of numbers. */
  List<Pattern> pairs() {
    return pairs;
  }

  private static boolean isAbout(PhraseLine line, Doubt doubt) {
    return line.kind().equals(WordRole.ASK.word())
        ? line.meaning().equals(doubt.word)
        : (doubt == Doubt.BOTH && line.meaning().equals("OU"))
            || (doubt == Doubt.JOINT && line.meaning().equals("and"));
  }

  /** Returns the phrases as a choice, the longest first. */
  private static String any(List<PhraseLine> lines) {
    Comparator<String> longest = Comparator.comparingInt(String::length).reversed();
    TreeSet<String> sorted = new TreeSet<>(longest.thenComparing(Comparator.naturalOrder()));
    lines.stream()
        .flatMap(line -> line.phrases().stream())
        .map(PhraseRow::bare)
        .forEach(sorted::add);
    return sorted.stream().map(UnclearWords::quoted).collect(Collectors.joining("|"));
  }

  private static String quoted(String phrase) {
    return Stream.of(phrase.split(" ", -1))
        .map(word -> word.replaceAll("([^\\p{L}\\d])", "\\\\$1"))
        .collect(Collectors.joining("\\s+"));
  }
}
