package org.isopter.mapper.foreign;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.value.Site;

/** Finds the eye in words, where they name exactly one. */
final class SideText {

  /** OD, OS and OU in capitals only: "od" may be a word, and "RE" may stand for "regarding". */
  private static final Pattern ABBREVIATED = Pattern.compile("\\b(OD|OS|OU)\\b");

  private static final Pattern WORDS =
      Pattern.compile(
          "\\b(right|left|both) eyes?\\b|\\boculus (dexter|sinister)\\b|\\b(binocular)\\b");

  private SideText() {}

  /** Returns every eye that the text names. */
  static Set<Site> in(String text) {
    Set<Site> sites = EnumSet.noneOf(Site.class);
    Matcher abbreviated = ABBREVIATED.matcher(text);
    while (abbreviated.find()) {
      sites.add(abbreviated(abbreviated.group(1)));
    }
    Matcher words = WORDS.matcher(text.toLowerCase(Locale.ROOT));
    while (words.find()) {
      sites.add(word(words));
    }
    return sites;
  }

  /** Returns the eye where the text names exactly one. */
  static Optional<Site> only(String text) {
    Set<Site> sites = in(text);
    return sites.size() == 1 ? Optional.of(sites.iterator().next()) : Optional.empty();
  }

  /** Returns the text without the eye that it names, and without what bound them together. */
  static String without(String text) {
    String plain = ABBREVIATED.matcher(text).replaceAll("");
    Matcher words = WORDS.matcher(plain.toLowerCase(Locale.ROOT));
    String bare = words.find() ? words.replaceAll("") : plain;
    return bare.replaceAll("\\(\\s*\\)|\\bof( the)?\\s*$", "")
        .replaceAll("[\\s,:;-]+$|^[\\s,:;-]+", "");
  }

  private static Site abbreviated(String letters) {
    return letters.equals("OD") ? Site.RIGHT : letters.equals("OS") ? Site.LEFT : Site.BOTH;
  }

  private static Site word(Matcher words) {
    if (words.group(1) != null) {
      return Effect.site(words.group(1));
    }
    return words.group(2) == null
        ? Site.BOTH
        : words.group(2).equals("dexter") ? Site.RIGHT : Site.LEFT;
  }
}
