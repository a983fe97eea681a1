package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.model.form.FormItem;
import org.isopter.model.value.Site;

/**
 * What stands around an answer to our own form: the words under which it was asked, extensions, and
 * the group that it is in. The name of the question says all that a record needs; what says
 * something else makes nobody sure of the answer.
 */
final class FormSurroundings {

  /** Units in which the same things are measured elsewhere. */
  private static final Pattern UNIT =
      Pattern.compile("(?i)(?<![\\p{L}])(kPa|cm|inch|inches|microns?|mm(?! ?Hg)|mmHg)(?![\\p{L}])");

  private FormSurroundings() {}

  /**
   * Refuses an item that its words, its extensions or its group contradict.
   *
   * @param group the group of a finding at a site around it, or the item itself where there is none
   * @param title what the form asks there; empty for a group
   */
  static void check(Place item, Place group, String title) throws Refusal {
    String name = item.text("linkId");
    String around = group.text("linkId");
    if (!name.equals(around) && !name.startsWith(around + "/")) {
      throw Refusal.of(Why.CODES_DISAGREE, item.at(), name + " in " + around, "its own group");
    }
    // "Left" asks for a direction of gaze, of either eye.
    Set<Site> named = SideText.in(item.text("text").replace(title, ""));
    if (site(name).filter(site -> !named.isEmpty() && !named.contains(site)).isPresent()) {
      throw Refusal.of(
          Why.CODES_DISAGREE, item.at() + "/text", "words of another eye", "those of " + name);
    }
    for (Place place : holders(item)) {
      if (place.children().stream().anyMatch(FormSurroundings::isExtension)) {
        throw Refusal.of(Why.UNREAD_QUALIFIER, place.at(), "an extension", "an answer alone");
      }
    }
  }

  /** An extension of a value stands beside it, under its name behind a line. */
  private static boolean isExtension(Place child) {
    return child.step().startsWith("extension") || child.step().startsWith("_");
  }

  /** Refuses an answer that was asked for in another unit than that of its question. */
  static void checkUnit(Place item, FormItem question) throws Refusal {
    Matcher named = UNIT.matcher(item.text("text"));
    boolean other =
        named.find()
            && question.unit().filter(unit -> !unit.equalsIgnoreCase(named.group())).isPresent();
    if (other) {
      throw Refusal.of(
          Why.CODES_DISAGREE,
          item.at() + "/text",
          named.group(),
          "the unit " + question.unit().orElseThrow());
    }
  }

  private static List<Place> holders(Place item) {
    List<Place> holders = new ArrayList<>();
    holders.add(item);
    for (Place answer : item.list("answer")) {
      holders.add(answer);
      answer.child("valueCoding").ifPresent(holders::add);
    }
    return holders;
  }

  /** Returns the one eye that a name such as {@code intraocular-pressure/right/value} is about. */
  private static Optional<Site> site(String name) {
    List<String> parts = List.of(name.split("/", -1));
    return Stream.of(Site.RIGHT, Site.LEFT)
        .filter(site -> parts.size() > 1 && parts.get(1).equals(site.word()))
        .findFirst();
  }
}
