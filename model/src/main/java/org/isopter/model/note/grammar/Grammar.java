package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * How the items of a finding, or of a few that are said together, are read: a row of the table.
 *
 * @param name what the items are about, in words for a message
 * @param example an item that is understood
 * @param sides what a side means in it
 * @param headings what an item starts with
 * @param slots what may be said
 * @param whole the findings that have no value when the whole is not done
 * @param method the slot of the technique, where there is one
 * @param unsided says whether what was said may stand without a side
 * @param unsidedSites the sites that it is then about
 * @param clockFace whether an hour in it may be a place as on the face of a clock
 * @param build makes the facts of an eye
 */
public record Grammar(
    String name,
    String example,
    Sides sides,
    List<Heading> headings,
    List<Slot<?>> slots,
    List<Finding<?>> whole,
    Optional<Slot<? extends Concept>> method,
    BiPredicate<Said, Heading> unsided,
    List<Site> unsidedSites,
    boolean clockFace,
    Build build) {

  /** What a side means. */
  public enum Sides {
    /** It names an eye; both is each of the two. */
    EACH,
    /** It names an eye; both is the two together. */
    EACH_OR_BOTH,
    /** It names an eye; both alone may be one test of the two together, or one of each. */
    EACH_OR_ASKED,
    /** It is part of the value: the eye that answers less. */
    NAMED,
    /** There is none: it is said of the pair. */
    PAIR;

    /** Says whether a side names an eye here, not a direction. */
    public boolean namesAnEye() {
      return this == EACH || this == EACH_OR_BOTH || this == EACH_OR_ASKED;
    }

    /** Returns the sites of the facts of an item at a side. */
    List<Site> at(Site side) throws NotRead {
      if (this == PAIR) {
        throw NotRead.because("it is said of both eyes together: leave the side out");
      }
      if (this == NAMED && side == Site.BOTH) {
        throw NotRead.because("it compares the eyes, so that it is never in both");
      }
      boolean each = this == EACH && side == Site.BOTH;
      return each ? Site.EACH_EYE : this == NAMED ? Site.PAIR : List.of(side);
    }
  }

  /** Makes the facts of an eye from what was said of it. */
  @FunctionalInterface
  public interface Build {
    /** Adds the facts to the eye. */
    void from(Eye eye) throws NotRead;
  }

  /** Begins a grammar: its name, and an item that it reads, for messages. */
  public static Draft of(String name, String example) {
    return new Draft(name, example);
  }

  /**
   * Says whether words are values of this item, with conditions and eyes or without, and no more.
   */
  public boolean tells(List<Token> words) {
    Cursor cursor = new Cursor(words, 0);
    boolean value = false;
    while (!cursor.atEnd()) {
      SlotFinder slots = new SlotFinder(this, cursor);
      Optional<Slot<?>> slot = slots.longest();
      if (slot.isPresent()) {
        cursor.back(slots.end(slot.get()));
        value = value || !slot.get().isCondition();
      } else if (cursor.attempt(Common.SIDES).isEmpty()) {
        return false;
      }
    }
    return value;
  }

  /** Says whether words are conditions of this item, or none at all. */
  public boolean isUnder(List<Token> words) {
    Cursor cursor = new Cursor(words, 0);
    boolean read = true;
    while (read && !cursor.atEnd()) {
      SlotFinder slots = new SlotFinder(this, cursor);
      Optional<Slot<?>> slot = slots.longest().filter(Slot::isCondition);
      read = slot.isPresent();
      cursor.back(slot.map(slots::end).orElse(cursor.place()));
    }
    return read;
  }

  /** Returns where the conditions of this item end that start at a place among words. */
  public int conditionsEnd(List<Token> words, int from) {
    return IntStream.rangeClosed(from, words.size())
        .filter(end -> isUnder(words.subList(from, end)))
        .max()
        .orElse(from);
  }

  /** Returns every word and phrase that it knows. */
  public Stream<String> words() {
    return Stream.concat(
        headings.stream().map(Heading::spoken),
        slots.stream().flatMap(slot -> slot.matcher().words().stream()));
  }

  /** A grammar that is nearly described. */
  public static final class Draft {
    private final String name;
    private final String example;
    private final List<Heading> headings = new ArrayList<>();
    private final List<Slot<?>> slots = new ArrayList<>(List.of(Common.ABSENCE, Common.TIME));
    private Sides sides = Sides.EACH;
    private List<Finding<?>> whole = List.of();
    private Optional<Slot<? extends Concept>> method = Optional.empty();
    private BiPredicate<Said, Heading> unsided = (said, heading) -> false;
    private List<Site> unsidedSites = Site.EACH_EYE;
    private boolean clockFace;

    private Draft(String name, String example) {
      this.name = name;
      this.example = example;
    }

    /** States what a side means. */
    public Draft sides(Sides meaning) {
      this.sides = meaning;
      this.unsidedSites =
          meaning == Sides.PAIR || meaning == Sides.NAMED ? Site.PAIR : unsidedSites;
      return this;
    }

    /** Adds headings by their words. */
    public Draft startsWith(String... phrases) {
      return startsWith(Arrays.stream(phrases).map(Heading::of));
    }

    /** Adds headings. */
    public Draft startsWith(Stream<Heading> more) {
      more.forEach(headings::add);
      return this;
    }

    /** Adds slots; the first that matches takes the words. */
    public Draft slots(Slot<?>... more) {
      slots.addAll(Arrays.asList(more));
      return this;
    }

    /** Leaves out the reason for absence and the time, which need a heading to belong to. */
    public Draft withoutCommonSlots() {
      slots.clear();
      return this;
    }

    /** States the findings that were not done where the whole item was not done. */
    public Draft whole(Finding<?>... findings) {
      this.whole = List.of(findings);
      return this;
    }

    /** States the slot that holds the technique of all facts of the item. */
    public Draft method(Slot<? extends Concept> slot) {
      this.method = Optional.of(slot);
      return slots(slot);
    }

    /** States when an item may stand without a side. */
    public Draft unsided(BiPredicate<Said, Heading> when) {
      this.unsided = when;
      return this;
    }

    /** States what an item without a side is about. */
    public Draft unsidedAt(List<Site> sites) {
      this.unsidedSites = sites;
      return this;
    }

    /** Takes a bare hour for a time only where it cannot be a place: 7:00 behind a sign. */
    public Draft onClockFace() {
      this.clockFace = true;
      return this;
    }

    /** Ends the grammar with how the facts of an eye are made. */
    public Grammar build(Build build) {
      if (slots.contains(Common.TIME)) {
        slots.add(Common.COURSE);
        slots.add(Common.REASON);
      }
      return new Grammar(
          name,
          example,
          sides,
          List.copyOf(headings),
          List.copyOf(slots),
          whole,
          method,
          (said, heading) -> said.has(Common.ABSENCE) || unsided.test(said, heading),
          unsidedSites,
          clockFace,
          build);
    }
  }
}
