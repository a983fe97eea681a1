package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * A note of known facts that lost a word, has one side for the other, another unit, a doubt, or was
 * cut in the middle says the same, or less with a question or a refusal, and never anything else.
 *
 * <p>What may be said is known from the facts that the note was written from; the reader is not
 * asked. {@code -Dnotes.mutated=5000} tries more notes, {@code -Dseed=…} others.
 */
class MutatedFactsTest {

  private static final int COUNT = Integer.getInteger("notes.mutated", 400);
  private static final long SEED = Long.getLong("seed", 20261128L);

  private static final Pattern WORD = Pattern.compile("[A-Za-z][A-Za-z/0-9]*");
  private static final Pattern SIDE = Pattern.compile("\\b(?:R|L|OD|OS|RE|LE|right|left)\\b");
  private static final Pattern MEASURED = Pattern.compile("(?<=\\d)( mmHg| mm|%)?(?= |,|\\.|;|$)");

  private static final Map<String, String> OTHER_SIDE =
      Map.of(
          "R", "L", "L", "R", "OD", "OS", "OS", "OD", "RE", "LE", "LE", "RE", "right", "left",
          "left", "right");

  private static final List<String> DOUBTS =
      List.of(
          "? ",
          "?",
          "possible ",
          "mother ",
          "mother: ",
          "was ",
          "previous ",
          "if ",
          "query ",
          "expect ",
          "repeat ",
          "plan ",
          "last visit ",
          "not sure ",
          "old ",
          "target ",
          "in 2019 ",
          "had ",
          "aim ",
          "never ",
          "yesterday ",
          "GP: ",
          "the other eye ",
          "fellow eye ");

  /**
   * A harmed note.
   *
   * @param text the note
   * @param allowed what it may say of each eye and finding
   */
  private record Harmed(String text, Map<String, Set<String>> allowed) {}

  private final Random random = new Random(SEED);
  private final NotesFromFacts notes = new NotesFromFacts(random);

  @Test
  void areReadAsTheyWereMeant() {
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < COUNT; i++) {
      List<NotesFromFacts.Item> items = notes.items();
      // Behind a comma, a "no" before it may reach a sign.
      String text = joined(texts(items), List.of(". ", "; ", "\n").get(random.nextInt(3)));
      Map<String, Set<String>> read = claims(Notes.READER.read(text));
      if (!read.equals(all(items))) {
        wrong.add(text + "\n    " + Notes.READER.read(text).unread());
      }
    }
    assertEquals("", String.join("\n\n", wrong), "seed " + SEED);
  }

  @Test
  void neverSayAnythingElse() {
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < COUNT; i++) {
      List<NotesFromFacts.Item> items = notes.items();
      Harmed harmed = harmed(items);
      claims(Notes.READER.read(harmed.text()))
          .forEach(
              (what, parts) -> {
                if (!allowed(harmed.allowed(), what).containsAll(parts)) {
                  wrong.add(texts(items) + "\n--> " + harmed.text() + "\n    " + what + parts);
                }
              });
    }
    assertEquals("", String.join("\n\n", wrong), "seed " + SEED);
  }

  /** Returns what may be said of an eye: what none of the two has, neither has. */
  private static Set<String> allowed(Map<String, Set<String>> claims, String what) {
    Set<String> ofPair =
        claims.getOrDefault(what.replaceFirst("^(?:right|left)", "both"), Set.of());
    return claims.getOrDefault(what, ofPair.contains("none") ? ofPair : Set.of());
  }

  private Harmed harmed(List<NotesFromFacts.Item> items) {
    int at = random.nextInt(items.size());
    NotesFromFacts.Item item = items.get(at);
    String separator = separator();
    return switch (random.nextInt(5)) {
      case 0 -> with(items, at, without(item.text()), all(items), separator);
      case 1 -> swapped(items, at, separator);
      case 2 -> otherUnit(items, at, separator);
      case 3 -> doubted(items, at, separator);
      default -> cut(items, separator);
    };
  }

  private static Harmed with(
      List<NotesFromFacts.Item> items,
      int at,
      String text,
      Map<String, Set<String>> allowed,
      String separator) {
    List<String> texts = texts(items);
    texts.set(at, text);
    return new Harmed(joined(texts, separator), allowed);
  }

  /** Drops a word. */
  private String without(String text) {
    MatchResult word = one(WORD, text).orElseThrow();
    return (text.substring(0, word.start()) + text.substring(word.end())).strip();
  }

  /** Names one eye for the other: an item of one eye is then about the other one. */
  private Harmed swapped(List<NotesFromFacts.Item> items, int at, String separator) {
    NotesFromFacts.Item item = items.get(at);
    Optional<MatchResult> side = one(SIDE, item.text());
    String text =
        side.map(
                found ->
                    item.text().substring(0, found.start())
                        + OTHER_SIDE.get(found.group())
                        + item.text().substring(found.end()))
            .orElse(item.text());
    List<NotesFromFacts.Item> rest = new ArrayList<>(items);
    if (side.isPresent()) {
      rest.set(at, new NotesFromFacts.Item(text, item.ofOther(), Map.of()));
    }
    return with(items, at, text, all(rest), separator);
  }

  /** Gives a number a unit that nothing at the eye is measured in. */
  private Harmed otherUnit(List<NotesFromFacts.Item> items, int at, String separator) {
    NotesFromFacts.Item item = items.get(at);
    Optional<MatchResult> number = one(MEASURED, item.text());
    String text =
        number
            .map(
                found ->
                    item.text().substring(0, found.start())
                        + " kPa"
                        + item.text().substring(found.end()))
            .orElse(item.text());
    List<NotesFromFacts.Item> rest = new ArrayList<>(items);
    if (number.isPresent()) {
      rest.remove(at);
    }
    return with(items, at, text, all(rest), separator);
  }

  /** Puts words of doubt, of another time, another person or a plan before an item. */
  private Harmed doubted(List<NotesFromFacts.Item> items, int at, String separator) {
    String doubt = DOUBTS.get(random.nextInt(DOUBTS.size()));
    List<NotesFromFacts.Item> rest = new ArrayList<>(items);
    String text = doubt + rest.remove(at).text();
    return with(items, at, text, all(rest), separator);
  }

  /** Cuts the note anywhere but in a number; what is left may say less. */
  private Harmed cut(List<NotesFromFacts.Item> items, String separator) {
    String text = joined(texts(items), separator);
    int end = 1 + random.nextInt(text.length() - 1);
    while (end < text.length() && isInNumber(text, end)) {
      end++;
    }
    return new Harmed(text.substring(0, end), all(items));
  }

  /** Says whether a cut here would leave a part of a number or a fraction, which is another one. */
  private static boolean isInNumber(String text, int at) {
    String around = text.substring(Math.max(0, at - 1), Math.min(text.length(), at + 1));
    return around.matches("[\\d./][\\d./]");
  }

  private Optional<MatchResult> one(Pattern pattern, String text) {
    List<MatchResult> found =
        pattern.matcher(text).results().collect(Collectors.toCollection(ArrayList::new));
    return found.isEmpty()
        ? Optional.empty()
        : Optional.of(found.get(random.nextInt(found.size())));
  }

  private String separator() {
    return List.of(". ", "; ", "\n", ", ").get(random.nextInt(4));
  }

  private static String joined(List<String> texts, String separator) {
    return String.join(separator, texts);
  }

  private static List<String> texts(List<NotesFromFacts.Item> items) {
    return items.stream()
        .map(NotesFromFacts.Item::text)
        .collect(Collectors.toCollection(ArrayList::new));
  }

  private static Map<String, Set<String>> all(List<NotesFromFacts.Item> items) {
    Map<String, Set<String>> all = new LinkedHashMap<>();
    items.forEach(item -> all.putAll(item.claims()));
    return all;
  }

  private static Map<String, Set<String>> claims(Note note) {
    Map<String, Set<String>> claims = new LinkedHashMap<>();
    note.facts().forEach(fact -> NotesFromFacts.claim(claims, FactLines.of(fact)));
    return claims;
  }
}
