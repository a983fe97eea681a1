package org.isopter.mapper.foreign.vocabulary;

import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.model.text.Memo;
import org.isopter.model.value.Site;

/** Finds the eye in words, where they name exactly one. */
public final class SideText {

  /** OD, OS and OU in capitals only: "od" may be a word, and "RE" may stand for "regarding". */
  private static final Pattern ABBREVIATED =
      Pattern.compile("(?<![\\p{L}\\p{N}.])O\\.?([DSU])(?:\\.|(?![\\p{L}\\p{N}]))");

  /**
   * RE, LE, BE, RA and LA in German, or the left eye in French, Spanish or Portuguese, behind what
   * was tested.
   */
  private static final Pattern AT_END =
      Pattern.compile("(?<=\\S)[\\s,:;(-]+(RE|LE|BE|RA|LA|O\\.?[GIE]\\.?)\\)?\\s*$");

  /** One capital letter between other words: often the side, but also a lens or a chart. */
  private static final Pattern LETTER =
      Pattern.compile("(?<![\\p{L}\\p{N}.'/])([RL])(?![\\p{L}\\p{N}.'/])");

  /** An eye that is named to say that it is not this one. */
  private static final Pattern DENIED =
      Pattern.compile("\\b(not|except|excluding|other than|opposite)( the| of)*\\s*$");

  /** Two letters may be an article, a word of Latin or a unit. */
  private static final int SHORTEST = 4;

  private static final Map<String, Site> WORDS = Habits.tables().words().sides();
  private static final Map<String, Site> ALONE = Habits.tables().words().sidesAlone();
  private static final Pattern NAMED = named();

  private static final Memo<Set<Site>> NAMES = new Memo<>(SideText::named);
  private static final Memo<Boolean> DENIALS = new Memo<>(SideText::denied);
  private static final Memo<Set<Site>> LETTERS = new Memo<>(SideText::letters);
  private static final Memo<String> REST = new Memo<>(SideText::rest);

  private SideText() {}

  /** Returns every eye that the text names. */
  public static Set<Site> in(String text) {
    return text.isEmpty() ? Set.of() : NAMES.of(text);
  }

  private static Set<Site> named(String text) {
    Set<Site> sites = EnumSet.noneOf(Site.class);
    Matcher abbreviated = ABBREVIATED.matcher(text);
    while (abbreviated.find()) {
      sites.add(abbreviated(abbreviated.group(1)));
    }
    Matcher words = NAMED.matcher(lower(text));
    while (words.find()) {
      sites.add(word(words.group()));
    }
    Matcher end = AT_END.matcher(text);
    if (end.find()) {
      sites.add(ofEnd(end.group(1)));
    }
    return Collections.unmodifiableSet(sites);
  }

  /** Returns the eye where the text names exactly one. */
  public static Optional<Site> only(String text) {
    Set<Site> sites = in(text);
    return sites.size() == 1 ? Optional.of(sites.iterator().next()) : Optional.empty();
  }

  /** Returns the eyes that the words of a body site name, which need not say that it is an eye. */
  public static Set<Site> ofSite(String text) {
    Set<Site> sites = EnumSet.noneOf(Site.class);
    sites.addAll(in(text));
    alone(text).ifPresent(sites::add);
    sites.addAll(ofWords(text));
    return sites;
  }

  /** Returns the eyes that words such as "left" name without saying that it is an eye. */
  public static Set<Site> ofWords(String text) {
    Set<Site> sites = EnumSet.noneOf(Site.class);
    for (String word : CodeText.words(text).split(" ", -1)) {
      if (word.length() >= SHORTEST && ALONE.containsKey(word)) {
        sites.add(ALONE.get(word));
      }
    }
    return sites;
  }

  /** Returns the side where the text is nothing else, such as "right" or "OS". */
  public static Optional<Site> alone(String text) {
    return Optional.ofNullable(ALONE.get(Habits.plain(text)));
  }

  /** Returns the eye where the text is nothing but its name. */
  public static Optional<Site> wholly(String text) {
    return alone(text).or(() -> without(text).isBlank() ? only(text) : Optional.empty());
  }

  /** Returns the eyes that single letters of a text may stand for; not enough to take one. */
  public static Set<Site> ofLetters(String text) {
    return text.isEmpty() ? Set.of() : LETTERS.of(text);
  }

  private static Set<Site> letters(String text) {
    Set<Site> sites = EnumSet.noneOf(Site.class);
    Matcher letters = LETTER.matcher(text);
    while (letters.find()) {
      sites.add(letters.group(1).equals("R") ? Site.RIGHT : Site.LEFT);
    }
    return Collections.unmodifiableSet(sites);
  }

  /** Says whether the text names an eye to say that it is another one. */
  public static boolean denies(String text) {
    return !text.isEmpty() && DENIALS.of(text);
  }

  private static boolean denied(String text) {
    String lower = lower(text);
    Matcher words = NAMED.matcher(lower);
    while (words.find()) {
      if (DENIED.matcher(lower.substring(0, words.start())).find()) {
        return true;
      }
    }
    Matcher letters = ABBREVIATED.matcher(text);
    return letters.find() && DENIED.matcher(lower.substring(0, letters.start())).find();
  }

  /** Returns the text without the eye that it names, and without what bound them together. */
  public static String without(String text) {
    return text.isEmpty() ? text : REST.of(text);
  }

  private static String rest(String text) {
    String plain = AT_END.matcher(ABBREVIATED.matcher(text).replaceAll("")).replaceAll("");
    Matcher words = NAMED.matcher(lower(plain));
    String bare = words.find() ? words.replaceAll("") : plain;
    return bare.replaceAll("\\(\\s*\\)|\\bof( the)?\\s*$", "")
        .replaceAll("[\\s,:;-]+$|^[\\s,:;-]+", "");
  }

  private static String lower(String text) {
    return text.replace('\u00a0', ' ').toLowerCase(Locale.ROOT);
  }

  private static Site ofEnd(String letters) {
    return letters.startsWith("R") ? Site.RIGHT : letters.equals("BE") ? Site.BOTH : Site.LEFT;
  }

  private static Site abbreviated(String letter) {
    return letter.equals("D") ? Site.RIGHT : letter.equals("S") ? Site.LEFT : Site.BOTH;
  }

  private static Site word(String found) {
    return WORDS.getOrDefault(found.replaceAll("[\\s,:(_-]+", " "), Site.BOTH);
  }

  /** Words of letters stand alone; in Japanese there are no gaps between words. */
  private static Pattern named() {
    String letters =
        WORDS.keySet().stream()
            .filter(words -> words.charAt(0) < '\u2e80')
            .sorted(Comparator.comparing(String::length).reversed())
            .map(SideText::spaced)
            .collect(Collectors.joining("|", "(?<![\\p{L}\\p{N}])(?:", ")(?![\\p{L}\\p{N}])"));
    String signs =
        WORDS.keySet().stream()
            .filter(words -> words.charAt(0) >= '\u2e80')
            .collect(Collectors.joining("|"));
    return Pattern.compile(letters + "|" + signs);
  }

  /** In "eye, right" a comma or a bracket may stand between; "right eye, left gaze" is not that. */
  private static String spaced(String words) {
    return words.startsWith("eye ")
        ? "(?<!\\b(?:right|left|both|other|fellow)\\s)" + words.replace(" ", "\\s*[,:(-]?\\s*")
        : words.replace(" ", "[\\s_-]+");
  }
}
