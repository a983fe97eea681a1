package org.isopter.model.clinical.pupil;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Site;

/**
 * A row of the table of causes, on its side.
 *
 * @param id the name of the row
 * @param title the cause in words, without a side
 * @param side the side; both where the row has none
 * @param grave whether it may cost sight or life when it is missed
 * @param allowed the words it allows for the signs it speaks of; of all others the usual ones
 * @param needs groups of signs; of each group at least one must be recorded, or may be, as here for
 *     the row to be named
 * @param source where the row comes from
 */
public record PupilCause(
    String id,
    String title,
    Site side,
    boolean grave,
    Map<PupilSigns.Key, Set<String>> allowed,
    List<Map<PupilSigns.Key, Set<String>>> needs,
    Citation source) {

  /** Returns the row seen in a mirror. */
  public PupilCause mirrored() {
    return new PupilCause(
        id,
        title,
        side.fellow(),
        grave,
        mirrored(allowed),
        needs.stream().map(PupilCause::mirrored).toList(),
        source);
  }

  private static Map<PupilSigns.Key, Set<String>> mirrored(Map<PupilSigns.Key, Set<String>> cells) {
    Map<PupilSigns.Key, Set<String>> mirrored = new HashMap<>();
    cells.forEach((key, words) -> mirrored.put(key.mirrored(), PupilSigns.mirrored(words)));
    return mirrored;
  }

  /** Returns the words that the row allows for a sign. */
  public Set<String> allows(PupilSigns.Key key) {
    return Optional.ofNullable(allowed.get(key)).orElse(key.sign().usual());
  }

  /** Returns the signs that the row does not allow. */
  List<PupilSigns.Key> against(PupilSigns signs) {
    return signs.all().entrySet().stream()
        .filter(one -> !meets(one.getValue().words(), allows(one.getKey())))
        .map(Map.Entry::getKey)
        .toList();
  }

  /** Says whether the row accounts for a sign that may depart from the usual, and is called for. */
  boolean explains(PupilSigns signs, List<PupilSigns.Key> unusual) {
    boolean some = unusual.stream().anyMatch(key -> explains(key, signs.words(key)));
    return some && needs.stream().allMatch(group -> isCalledFor(group, signs));
  }

  private boolean explains(PupilSigns.Key key, Set<String> seen) {
    Set<String> usual = key.sign().usual();
    return seen.stream().anyMatch(word -> !usual.contains(word) && allows(key).contains(word));
  }

  private static boolean isCalledFor(Map<PupilSigns.Key, Set<String>> group, PupilSigns signs) {
    return group.entrySet().stream()
        .anyMatch(
            need ->
                signs.seen(need.getKey()).filter(seen -> isCalled(need, seen.words())).isPresent());
  }

  /** Of the pair a vague word names the other side too, and calls for nothing. */
  private static boolean isCalled(Map.Entry<PupilSigns.Key, Set<String>> need, Set<String> seen) {
    return need.getKey().sign().isOfThePair()
        ? need.getValue().containsAll(seen)
        : meets(seen, need.getValue());
  }

  private static boolean meets(Set<String> seen, Set<String> allowed) {
    return seen.stream().anyMatch(allowed::contains);
  }

  /** Returns the row in words, with its side. */
  @Override
  public String toString() {
    return side == Site.BOTH ? title : side.word() + " " + title;
  }
}
