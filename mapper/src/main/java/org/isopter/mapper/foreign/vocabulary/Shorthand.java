package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.text.Memo;
import org.isopter.model.value.Site;

/**
 * Reads the text of a value as bedside shorthand, under what the code is about.
 *
 * <p>All of the text is understood or nothing of it is taken. The side may be said by codes, by the
 * text, or by both where they agree. A time of day is refused: the zone of the text is not known.
 */
public final class Shorthand {

  private static final Memo<Note> NOTES = new Memo<>(NoteReader.standard().withoutAdvice()::read);
  private static final String PRESSURE = "intraocular-pressure";

  private static final Pattern SIDE =
      Pattern.compile(
          "(?<![a-z])(r|l|b|re|le|be|beo|od|os|ou|right|left|both|bilateral)(?![a-z])",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern LONE_POWER = Pattern.compile("[^0-9]*[0-9]+(?:\\.[0-9]+)?\\s*");

  private final Topic topic;
  private final String at;
  private final Optional<Site> eye;

  /**
   * Makes a reader.
   *
   * @param topic what the code is about
   * @param at where the text stands
   * @param eye the eye that codes name
   */
  public Shorthand(Topic topic, String at, Optional<Site> eye) {
    this.topic = topic;
    this.at = at;
    this.eye = eye;
  }

  /** Says whether a text names an eye, or may do so. */
  public static boolean namesEye(String text) {
    return SIDE.matcher(text).find();
  }

  /**
   * Returns what the text tells, all of it.
   *
   * @throws Refusal when it names another eye, or a unit that is not stated
   */
  public List<Fact<?>> read(String text) throws Refusal {
    Optional<Note> last = Optional.empty();
    for (String form : forms(text)) {
      Note note = NOTES.of(form);
      if (isWhole(note)) {
        if (!isOfPair(note.facts(), text, form)) {
          refuseOtherEye(note.facts());
        }
        refuseUnstatedUnit(note.facts(), text);
        refuseLonePower(note.facts(), text);
        return note.facts();
      }
      last = Optional.of(note);
    }
    throw Refusal.of(Why.VALUE_UNFIT, at, "\"" + text + "\"", wanted(last));
  }

  /**
   * Returns the text behind the eye and the words that the code stands for, where it names no eye;
   * then as it is; then behind the words alone.
   */
  private List<String> forms(String text) {
    List<String> forms = new ArrayList<>();
    if (eye.isPresent() && !namesEye(text)) {
      String side = CodedStatement.letters(eye.get());
      topic.headings().forEach(heading -> forms.add(heading + " " + side + " " + text));
    }
    forms.add(text);
    topic.headings().forEach(heading -> forms.add(heading + " " + text));
    return forms;
  }

  private boolean isWhole(Note note) {
    return note.unread().isEmpty()
        && !note.facts().isEmpty()
        && note.facts().stream().allMatch(fact -> topic.holds(fact.finding().id()))
        && note.facts().stream().allMatch(fact -> fact.remarks().isEmpty());
  }

  /** What compares the eyes is of both, and the eye that codes name is in what it says. */
  private boolean isOfPair(List<Fact<?>> facts, String text, String form) {
    boolean eyeAdded = eye.isPresent() && !namesEye(text) && namesEye(form);
    return eyeAdded && facts.stream().allMatch(f -> f.finding().sites().equals(Site.PAIR));
  }

  private void refuseOtherEye(List<Fact<?>> facts) throws Refusal {
    for (Fact<?> fact : facts) {
      if (eye.filter(coded -> coded != Site.BOTH && coded != fact.site()).isPresent()) {
        throw Refusal.of(
            Why.SIDES_DISAGREE,
            at,
            fact.site().word() + " in the text, " + eye.get().word() + " by code",
            "one eye");
      }
    }
  }

  /** A note needs no unit of a pressure; a text of an unknown system does. */
  private void refuseUnstatedUnit(List<Fact<?>> facts, String text) throws Refusal {
    boolean pressure =
        facts.stream().anyMatch(f -> f.finding().id().equals(PRESSURE) && f.panel().isPresent());
    if (pressure && !text.toLowerCase(Locale.ROOT).contains("hg")) {
      throw Refusal.of(Why.UNIT_NOT_STATED, at, "\"" + text + "\"", "a pressure in mmHg");
    }
  }

  /** In a note a power alone is a sphere; with others it may be the mean of sphere and cylinder. */
  private void refuseLonePower(List<Fact<?>> facts, String text) throws Refusal {
    boolean lens = facts.stream().anyMatch(f -> f.finding().equals(Refractions.REFRACTION));
    if (lens && LONE_POWER.matcher(text).matches()) {
      throw Refusal.of(
          Why.VALUE_UNFIT, at, "\"" + text + "\"", "sphere and cylinder, or sphere DS");
    }
  }

  private static String wanted(Optional<Note> last) {
    String why =
        last.flatMap(note -> note.unread().stream().findFirst())
            .map(unread -> ": " + unread.why())
            .orElse(" and tells only what the code is about");
    return "shorthand that is understood to the last word" + why;
  }
}
