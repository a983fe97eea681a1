package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.value.LowerCase;
import org.isopter.model.value.Site;

/**
 * How far a "no" reaches. In "no diplopia, ptosis" it may hold for both: a sign that is only named
 * behind a denied one is neither taken as there nor as absent.
 */
public final class Denial {

  private static final Set<Finding<?>> SIGNS =
      Set.of(
          Pupils.AFFERENT_DEFECT,
          Lids.PTOSIS,
          Movements.DIPLOPIA,
          Movements.NYSTAGMUS,
          Movements.PAIN,
          Discs.SWELLING,
          Discs.HAEMORRHAGE,
          Discs.VENOUS_PULSATION);

  /** Lists of signs, of which each fact says whether it is there. */
  private static final Set<Finding<?>> LISTS =
      Set.of(Segments.ANTERIOR, Segments.POSTERIOR, Pupils.FEATURE, Discs.SIGN);

  private static final Set<String> NOTHING = Set.of("none", "absent");

  private boolean open;

  /** What the item before denied. */
  private List<Fact<?>> denied = List.of();

  /** The eyes, of the two, that something was said of in the clause. */
  private final Set<Site> eyes = new HashSet<>();

  /** Starts a new clause, which no earlier "no" reaches. */
  public void clear() {
    open = false;
    denied = List.of();
    eyes.clear();
  }

  /** Takes note of a mark before the first item of a clause that may deny it. */
  public void open() {
    open = true;
  }

  /** Takes note of the facts of an item. */
  public void said(List<Fact<?>> facts) {
    facts.stream().map(Fact::site).filter(Site.EACH_EYE::contains).forEach(eyes::add);
  }

  /** Takes note of an item that was not read. */
  public void left(List<Token> item) {
    item.stream().flatMap(word -> Common.side(word).stream()).forEach(this::add);
  }

  private void add(Site side) {
    eyes.addAll(side == Site.BOTH ? Site.EACH_EYE : List.of(side));
  }

  /**
   * Refuses a sign that is denied without a side behind what is said of one eye: it may be that
   * eye's.
   *
   * @param behindEye whether what stands just before was not read and ends with an eye
   * @throws NotRead when it may be of that eye alone
   */
  public void requireSide(List<Token> item, List<Fact<?>> facts, boolean behindEye) throws NotRead {
    boolean ofBoth =
        facts.stream().map(Fact::site).filter(Site.EACH_EYE::contains).distinct().count() == 2;
    boolean named = item.stream().anyMatch(word -> Common.side(word).isPresent());
    if ((eyes.size() == 1 || behindEye) && ofBoth && isNo(item.get(0)) && !named) {
      throw NotRead.because(ItemReader.NO_SIDE);
    }
  }

  /**
   * Takes note of an item.
   *
   * @throws NotRead when a "no" of an earlier item of the clause may hold for it too
   */
  public void requireClear(List<Token> item, List<Fact<?>> facts) throws NotRead {
    boolean denies = item.stream().anyMatch(Denial::isNo);
    boolean bare = !denies && facts.stream().anyMatch(Denial::isThere) && !isStated(item);
    if (open && bare && !isOfOtherEye(facts)) {
      throw reaches(item.get(0));
    }
    open = denies && !bare;
    denied = open ? List.copyOf(facts) : List.of();
  }

  /** Says whether just this sign was denied of the other eye: no ptosis L, ptosis R. */
  private boolean isOfOtherEye(List<Fact<?>> facts) {
    return facts.size() == 1
        && denied.size() == 1
        && Site.EACH_EYE.contains(facts.get(0).site())
        && denied.get(0).site().equals(facts.get(0).site().fellow())
        && sign(denied.get(0)).equals(sign(facts.get(0)));
  }

  /** Returns which sign a fact is about: of a list of signs, which entry. */
  private static List<Object> sign(Fact<?> fact) {
    List<Object> sign = new ArrayList<>(List.of(fact.finding()));
    for (String key : fact.finding().distinguishing()) {
      sign.add(fact.panel().flatMap(panel -> Optional.ofNullable(panel.parts().get(key))));
    }
    return sign;
  }

  /** Returns why a sign that is only named behind a denied one is not read. */
  static NotRead reaches(Token sign) {
    return NotRead.at(sign, "the \"no\" before it may hold for it too")
        .write("no ptosis; RAPD L present");
  }

  /** Says whether a word is a no, by itself or as the sign of what is missing. */
  public static boolean isNo(Token token) {
    return WordFiles.is(WordRole.NO, token.text());
  }

  /** Says whether the words only name a sign. */
  static boolean isOnlyNamed(List<Token> words) {
    return !isStated(words) && words.stream().anyMatch(Denial::isSign);
  }

  /** Says whether an item is about signs, which its heading beside an eye says are there. */
  public static boolean isOfSign(Grammar grammar) {
    return grammar.whole().size() == 1 && grammar.whole().stream().allMatch(Denial::isSign);
  }

  private static boolean isSign(Finding<?> finding) {
    return SIGNS.contains(finding) || LISTS.contains(finding);
  }

  private static boolean isSign(Token word) {
    return WordFiles.is(WordRole.SIGN, word.text())
        || WordFiles.is(WordRole.SIGN, LowerCase.of(word.seen()));
  }

  private static boolean isStated(List<Token> words) {
    return words.stream()
        .anyMatch(word -> WordFiles.is(WordRole.STATES, word.text()) || word.isNumber());
  }

  private static boolean isThere(Fact<?> fact) {
    if (LISTS.contains(fact.finding())) {
      return fact.panel()
          .map(panel -> panel.parts().get("presence"))
          .flatMap(part -> part.ifFound())
          .filter(part -> part instanceof Datum.Coded coded && coded.concept() == Presence.PRESENT)
          .isPresent();
    }
    return SIGNS.contains(fact.finding())
        && fact.panel()
            .flatMap(EncodedValue::value)
            .filter(Datum.Coded.class::isInstance)
            .map(value -> ((Datum.Coded) value).concept().word())
            .filter(word -> !NOTHING.contains(word))
            .isPresent();
  }
}
