package org.isopter.mapper.foreign.document;

import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;

/** The text that a sender made for people of what a resource, or a section, says. */
public final class NarrativeWords {

  private static final Pattern TAGS = Pattern.compile("<[^>]*>");

  private NarrativeWords() {}

  /** Returns its words without the tags; empty text where there is none. */
  public static String of(Raw holder) {
    return holder
        .object("text")
        .flatMap(text -> text.string("div"))
        .map(div -> TAGS.matcher(div).replaceAll(" "))
        .orElse("");
  }

  /** Returns true if it says more than the elements, by its status. */
  public static boolean isMore(Raw holder) {
    return holder
        .object("text")
        .flatMap(text -> text.string("status"))
        .filter("additional"::equals)
        .isPresent();
  }
}
