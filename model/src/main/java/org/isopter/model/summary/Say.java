package org.isopter.model.summary;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/** The small words of a letter. */
final class Say {

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
          "hardy rand rittler", "Hardy-Rand-Rittler");

  private Say() {}

  static String concept(Concept concept) {
    return words(concept.word());
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
      case MASKED -> "known, but withheld";
      case UNKNOWN -> "not known";
    };
  }

  static String quantity(Quantity quantity) {
    return unit(quantity.toString());
  }

  /** Degrees are written with their sign; every other unit as it is. */
  static String unit(String text) {
    return text.replaceAll("(?<=\\d) deg\\b", "°").replaceAll("(?<=\\d) PD\\b", " prism dioptres");
  }

  static String eye(Site site) {
    return site == Site.BOTH ? "both eyes" : site.word() + " eye";
  }

  static String list(List<String> items) {
    int last = items.size() - 1;
    return last < 1
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
  }

  static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** Returns a title within a sentence; abbreviations and names keep their capitals. */
  static String lower(String title) {
    boolean name = title.length() > 1 && Character.isUpperCase(title.charAt(1));
    return name ? title : title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
  }
}
