package org.isopter.model.text;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/** The small words of a letter. */
public final class PlainWords {

  /** Names keep their capital within a sentence. */
  private static final Map<String, String> NAMES =
      Map.of(
          "snellen", "Snellen",
          "landolt", "Landolt",
          "ishihara", "Ishihara",
          "goldmann", "Goldmann",
          "etdrs", "ETDRS",
          "perkins", "Perkins",
          "logmar", "logMAR",
          "hardy rand rittler", "Hardy-Rand-Rittler",
          "tumbling e", "tumbling E",
          "gaze evoked", "gaze-evoked");

  /** Answers that read ill as their word. */
  private static final Map<String, String> PHRASES =
      Map.of(
          "non-contact", "non-contact",
          "cover-uncover", "cover-uncover test",
          "alternate-cover", "alternate cover test",
          "phenylephrine-weak", "weak phenylephrine",
          "no-lens", "aphakia");

  private PlainWords() {}

  static String concept(Concept concept) {
    String phrase = PHRASES.get(concept.word());
    return phrase == null ? words(concept.word()) : phrase;
  }

  static String words(String hyphened) {
    String words = hyphened.replace('-', ' ');
    for (Map.Entry<String, String> name : NAMES.entrySet()) {
      words = words.replaceAll("\\b" + name.getKey() + "\\b", name.getValue());
    }
    return words;
  }

  static String absence(Absence reason) {
    return switch (reason) {
      case NOT_DONE -> "not done";
      case REFUSED -> "declined";
      case UNABLE -> "could not be done";
      case NOT_APPLICABLE -> "not applicable";
      case MASKED -> "withheld";
      case UNKNOWN -> "not known";
    };
  }

  /** Returns why a part of a test has no result, with the place behind it. */
  static String untested(Absence reason) {
    return switch (reason) {
      case NOT_DONE -> "not tested";
      case UNABLE -> "could not be tested";
      case REFUSED, NOT_APPLICABLE, MASKED, UNKNOWN -> absence(reason);
    };
  }

  static String quantity(Quantity quantity) {
    return unit(quantity.toString());
  }

  /** Degrees are written with their sign; units that are no usual word are put as one. */
  static String unit(String text) {
    return text.replaceAll("(?<=\\d) deg\\b", "°")
        .replaceAll("^1 PD$", "1 prism dioptre")
        .replaceAll("(?<=\\d) PD\\b", " prism dioptres")
        .replaceAll("(?<=\\d) um\\b", " µm");
  }

  /** Returns an eye, or both, in words. */
  public static String eye(Site site) {
    return site == Site.BOTH ? "both eyes" : site.word() + " eye";
  }

  /** Returns items as a list in a sentence. */
  public static String list(List<String> items) {
    int last = items.size() - 1;
    return last < 1
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
  }

  /** Returns the words with a full stop, unless they have one. */
  public static String sentence(String words) {
    return words.endsWith(".") || words.endsWith(".)") ? words : words + ".";
  }

  /** Returns a text with a capital letter first. */
  public static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** Returns a title within a sentence; abbreviations and names keep their capitals. */
  public static String lower(String title) {
    boolean name = title.length() > 1 && Character.isUpperCase(title.charAt(1));
    return name ? title : title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
  }
}
