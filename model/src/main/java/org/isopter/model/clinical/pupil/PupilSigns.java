package org.isopter.model.clinical.pupil;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.isopter.model.value.Site;

/**
 * The signs of both pupils and beside them, each as far as it was examined.
 *
 * @param all what was seen, by sign and site
 */
public record PupilSigns(Map<Key, Seen> all) {

  /** A sign at a site; signs of the pair are at both eyes. */
  public record Key(PupilSign sign, Site site) {
    Key mirrored() {
      return new Key(sign, site.fellow());
    }

    /** Returns the sign with its eye, in words. */
    @Override
    public String toString() {
      return sign.isOfThePair() ? sign.title() : site.word() + " " + sign.title();
    }
  }

  /**
   * What was seen of a sign.
   *
   * @param words the words that it may stand for, at least one; several where the record is vague
   * @param fact what was recorded, in words
   */
  public record Seen(Set<String> words, String fact) {
    private Seen mirrored() {
      return new Seen(PupilSigns.mirrored(words), fact);
    }
  }

  /**
   * Holds signs.
   *
   * @throws IllegalArgumentException for a word that a sign does not have, or none
   */
  public PupilSigns {
    // The order of the facts is that of the record.
    all = Collections.unmodifiableMap(new LinkedHashMap<>(all));
    all.forEach((key, seen) -> require(key.sign(), seen.words()));
  }

  private static void require(PupilSign sign, Set<String> words) {
    if (words.isEmpty() || !sign.words().containsAll(words)) {
      throw new IllegalArgumentException(sign + " is never " + words);
    }
  }

  /** Returns signs of which none was examined. */
  public static PupilSigns none() {
    return new PupilSigns(Map.of());
  }

  /**
   * Returns these signs with a further one.
   *
   * @param words what it may stand for; each is a word of the sign
   * @throws IllegalArgumentException for a word that the sign does not have, or none
   */
  public PupilSigns with(PupilSign sign, Site site, String fact, Set<String> words) {
    Map<Key, Seen> more = new LinkedHashMap<>(all);
    more.put(new Key(sign, sign.isOfThePair() ? Site.BOTH : site), new Seen(words, fact));
    return new PupilSigns(more);
  }

  /** Returns what was seen of a sign. */
  public Optional<Seen> seen(Key key) {
    return Optional.ofNullable(all.get(key));
  }

  /** Returns the words that a sign may stand for; none where it was not examined. */
  Set<String> words(Key key) {
    return seen(key).map(Seen::words).orElse(Set.of());
  }

  /** Returns what was recorded of a sign; its name where it was not examined. */
  String fact(Key key) {
    return seen(key).map(Seen::fact).orElse(key.toString());
  }

  /** Returns the signs seen in a mirror: right and left changed over. */
  public PupilSigns mirrored() {
    Map<Key, Seen> mirrored = new LinkedHashMap<>();
    all.forEach((key, seen) -> mirrored.put(key.mirrored(), seen.mirrored()));
    return new PupilSigns(mirrored);
  }

  static Set<String> mirrored(Set<String> words) {
    Set<String> mirrored = new LinkedHashSet<>();
    words.forEach(word -> mirrored.add(mirrored(word)));
    return mirrored;
  }

  private static String mirrored(String word) {
    if (word.startsWith("right")) {
      return "left" + word.substring("right".length());
    }
    return word.startsWith("left") ? "right" + word.substring("left".length()) : word;
  }

  /** Returns the signs that certainly depart from the usual. */
  public List<Key> unusual() {
    Predicate<Map.Entry<Key, Seen>> departs =
        one -> one.getValue().words().stream().noneMatch(one.getKey().sign().usual()::contains);
    return all.entrySet().stream().filter(departs).map(Map.Entry::getKey).toList();
  }

  /** Returns the signs that may depart from the usual: a vague one may, and one judged twice. */
  List<Key> maybeUnusual() {
    Predicate<Map.Entry<Key, Seen>> may =
        one -> !one.getKey().sign().usual().containsAll(one.getValue().words());
    return all.entrySet().stream().filter(may).map(Map.Entry::getKey).toList();
  }

  List<String> facts() {
    List<String> facts = all.values().stream().map(Seen::fact).distinct().toList();
    return facts.isEmpty() ? List.of("no sign of the pupils examined") : facts;
  }
}
