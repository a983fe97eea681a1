package org.isopter.model.note.grammar;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/** Reads one item: its tokens sorted by side, shared among the eyes, and made into facts. */
public final class ItemReader {

  /**
   * An item that was read.
   *
   * @param start its heading, and what the next clause of the same item takes over from it
   * @param facts its facts; none where it is only a heading
   * @param length the number of tokens read
   */
  public record Item(Start start, List<Fact<?>> facts, int length) {}

  /**
   * How an item starts.
   *
   * @param grammar what reads it
   * @param heading its heading
   * @param conditions the conditions that an earlier clause of the same item stated
   * @param continued whether there was an earlier clause
   */
  public record Start(Grammar grammar, Heading heading, Said conditions, boolean continued) {

    /** Returns the start of an item that goes on with the conditions of this one. */
    public Start again(Heading next) {
      return new Start(grammar, next, conditions, false);
    }

    /**
     * Says whether a value of this item starts with the words of another heading: VA, ph 6/6. Of an
     * acuity alone: a value behind it that goes back would be read as one of the other heading.
     */
    public boolean reads(List<Token> tokens, int place, Headings.Found other) {
      Cursor cursor = new Cursor(tokens, place);
      return grammar.sides() == Grammar.Sides.EACH_OR_ASKED
          && !other.grammar().equals(grammar)
          && grammar.slots().stream()
              .filter(slot -> !slot.isCondition())
              .anyMatch(
                  slot -> {
                    cursor.back(place);
                    return cursor.attempt(slot.matcher()).isPresent()
                        && cursor.place() > other.end();
                  });
    }

    /** Returns the start of an item under a heading, with no condition stated before. */
    public static Start of(Grammar grammar, Heading heading) {
      return new Start(grammar, heading, new Said(), false);
    }
  }

  public static final String NO_SIDE = "no side is named, and a side is never guessed";

  private final Headings headings;
  private final Optional<OffsetDateTime> performed;

  public ItemReader(Headings headings, Optional<OffsetDateTime> performed) {
    this.headings = headings;
    this.performed = performed;
  }

  /**
   * Reads an item.
   *
   * @param tokens the item and what follows it, without its heading
   * @param first where the item starts
   * @param side the eye that the line or block is about, for an item that names none
   * @throws NotRead when a word is not understood or a side is missing
   */
  public Item read(Start start, List<Token> tokens, Token first, Optional<Site> side)
      throws NotRead {
    try {
      return read(start, Scan.of(start, headings, tokens), first, side);
    } catch (NotRead notRead) {
      throw notRead.orAt(first);
    }
  }

  private Item read(Start start, Scan scan, Token first, Optional<Site> side) throws NotRead {
    Said pair = scan.groups().isEmpty() ? new Said() : scan.head().ofPair();
    Said head = start.conditions().overriddenBy(scan.head()).without(pair);
    Start next = new Start(start.grammar(), start.heading(), head.conditions(), true);
    List<Fact<?>> facts = new ArrayList<>();
    if (!isOnlyHeading(start.grammar(), scan, side)) {
      if (scan.isLeftOpen(first)) {
        throw NotRead.because("nothing is said of it");
      }
      List<Scan.Group> groups =
          Sharing.among(
              head,
              groups(start, scan, first, side),
              scan.parts(head),
              scan.commas(),
              Denial.isOfSign(start.grammar()));
      boolean compared = start.grammar().sides() == Grammar.Sides.NAMED;
      for (Scan.Group group : compared ? Compared.withoutDenied(groups) : groups) {
        group.said().putAll(pair);
        facts.addAll(facts(start.grammar(), group));
      }
    }
    return new Item(next, facts, scan.length());
  }

  private static boolean isOnlyHeading(Grammar grammar, Scan scan, Optional<Site> side) {
    return grammar.sides().namesAnEye()
        && side.isEmpty()
        && scan.groups().isEmpty()
        && !scan.head().hasValues();
  }

  private static List<Scan.Group> groups(Start start, Scan scan, Token first, Optional<Site> side)
      throws NotRead {
    if (!scan.groups().isEmpty()) {
      requireClearHead(start, scan);
      requireSaid(start, scan);
      requireClearBoth(start, scan.groups());
      return start.grammar().sides() == Grammar.Sides.NAMED
          ? Compared.withoutDenied(scan.groups())
          : scan.groups();
    }
    boolean needed =
        start.grammar().sides() != Grammar.Sides.PAIR
            && !start.grammar().unsided().test(scan.head(), start.heading());
    if (side.isEmpty() && needed) {
      throw NotRead.because(NO_SIDE);
    }
    return List.of(new Scan.Group(side, first, new Said()));
  }

  /** A side alone, as the next clause of an item, says nothing: what it is about may be lost. */
  private static void requireSaid(Start start, Scan scan) throws NotRead {
    boolean nothing =
        !scan.head().hasValuesOfEyes()
            && scan.groups().stream().noneMatch(group -> group.said().hasValues());
    if (start.continued() && nothing) {
      throw NotRead.because("nothing is said of this eye");
    }
  }

  /** Beside the right eye and the left, both is the two together; alone it may be each of them. */
  private static void requireClearBoth(Start start, List<Scan.Group> groups) throws NotRead {
    boolean asked =
        start.grammar().sides() == Grammar.Sides.EACH_OR_ASKED
            && !start.continued()
            && groups.stream().allMatch(ItemReader::isUnclearBoth);
    Optional<Scan.Group> apart =
        start.grammar().sides() == Grammar.Sides.EACH_OR_ASKED
            ? groups.stream().filter(group -> isApart(group, groups)).findFirst()
            : Optional.empty();
    if (asked || apart.isPresent()) {
      throw NotRead.because("it may be one test with both eyes open, or one of each eye")
          .orAt(apart.orElse(groups.get(0)).at());
    }
  }

  /** Says whether both have a test that neither of the eyes beside them has: both N5. */
  private static boolean isApart(Scan.Group both, List<Scan.Group> groups) {
    Set<Slot<?>> values = both.said().values();
    return groups.size() > 1
        && isUnclearBoth(both)
        && groups.stream()
            .filter(group -> !group.equals(both))
            .noneMatch(group -> group.said().values().stream().anyMatch(values::contains));
  }

  private static boolean isUnclearBoth(Scan.Group group) {
    String word = group.at().text();
    return group.side().equals(Optional.of(Site.BOTH))
        && !word.equalsIgnoreCase(Common.BOTH_OPEN)
        && !word.equalsIgnoreCase(Common.EACH);
  }

  /** A value before the side may belong to what stands before it. */
  private static void requireClearHead(Start start, Scan scan) throws NotRead {
    Optional<Scan.Group> between =
        scan.groups().stream()
            .filter(group -> group.said().hasValues() && namesTwo(group))
            .findFirst();
    if (between.isPresent() && scan.head().hasValuesOfEyes()) {
      throw NotRead.because("each of the two eyes may have its own: put each value behind its side")
          .orAt(between.get().at());
    }
    boolean ofBoth =
        scan.groups().stream().allMatch(group -> group.side().equals(Optional.of(Site.BOTH)));
    if (ofBoth) {
      return;
    }
    boolean trails = start.continued() && scan.groups().get(0).said().hasValues();
    boolean apart =
        Sharing.isBehind(scan.head().without(scan.head().ofPair()), scan.groups())
            || scan.parts(scan.head()).isPresent();
    boolean ofAll = start.heading().plural() && !apart;
    if (scan.head().hasValuesOfEyes() && (ofAll || trails)) {
      throw NotRead.because("it may be said of the other eye too: put each value behind its side");
    }
  }

  /** Says whether each of the eyes is named where both are meant: pink R and L swollen. */
  private static boolean namesTwo(Scan.Group group) {
    return Lexer.read(group.at().seen()).stream()
            .flatMap(word -> Common.side(word).stream())
            .distinct()
            .count()
        == 2;
  }

  private List<Fact<?>> facts(Grammar grammar, Scan.Group group) throws NotRead {
    try {
      List<Fact<?>> facts = new ArrayList<>();
      Optional<Site> named = grammar.sides().namesAnEye() ? Optional.empty() : group.side();
      for (Site site : sites(grammar, group)) {
        facts.addAll(Eye.facts(grammar, site, named, group, performed));
      }
      return facts;
    } catch (NotRead notRead) {
      throw notRead.orAt(group.at());
    }
  }

  private static List<Site> sites(Grammar grammar, Scan.Group group) throws NotRead {
    if (group.side().isEmpty()) {
      return grammar.unsidedSites();
    }
    boolean each = group.at().is(Common.EACH) && grammar.sides().namesAnEye();
    return each ? Site.EACH_EYE : grammar.sides().at(group.side().get());
  }
}
