package org.isopter.model.note.word;

import java.util.List;
import java.util.Optional;

/**
 * What a line of the files of phrases is about: the part that its words have in a sentence.
 *
 * <p>Its word is the kind of the line. All but {@link #SAY}, {@link #ASK} and {@link #NUMBER} have
 * the same meaning for every word of theirs.
 */
public enum WordRole {
  /** Phrases that stand for words of the grammar. */
  SAY("say", false),
  /** Phrases that may mean one of several things; the meaning names what is asked. */
  ASK("ask", false),
  /** Numbers in words; the meaning has their digits. */
  NUMBER("number", false),
  /** What joins whole number and decimals: point. */
  POINT("point", false),
  /** What stands between the two numbers of a fraction: over. */
  OVER("over", false),
  /** What behind "one" makes it a number and no person or thing. */
  COUNTED("counted", false),
  /** Words that deny a sign. */
  NO("no", false),
  /** Words that deny a list of signs. */
  LIST_NO("denial", false),
  /** Words that join what may be one or the other. */
  OR("or", false),
  /** Words that join what stands on either side of them. */
  AND("and", false),
  /** Words that say of a sign that it is there. */
  STATES("states", false),
  /** Names of signs that a "no" before may reach. */
  SIGN("sign", false),
  /** Words that never are a sentence, for they belong to what follows their full stop. */
  OPEN("open", false),
  /** Words that put a clause into another time, or leave it open. */
  OTHER("other", true),
  /** Words that say that a clause is about what is to be done. */
  PLAN("plan", true),
  /** Words that start another part of the notes. */
  SECTION("section", true),
  /** Words of a diagnosis, which before a colon only say what the note is about. */
  LABEL("label", true),
  /** Words that count the years of a number before them. */
  AGE("age", false),
  /** Words for the patient behind an age, before a colon. */
  SEX("sex", false),
  /** Headings behind which a colon may stand before another heading. */
  HEADING("heading", false),
  /** Headings of numbers that are never less than nought and never two of one value. */
  SIZE("size", false),
  /** Words for a person who is not the patient. */
  PERSON("person", true),
  /** Words for a person who was named before. */
  PRONOUN("pronoun", false),
  /** Words with which what was found today starts. */
  NOW("now", true),
  /** Headings with which what was found today starts. */
  STARTS("starts", false),
  /** Words for the history of the patient. */
  HISTORY("history", false),
  /** Words in a history for a visit, or for who found something there. */
  CARE("care", false),
  /** Words of a label for what another wrote, or at another time. */
  RECORD("record", false),
  /** Words at the start of a clause that take back what stands before it. */
  RETRACT("retract", true),
  /** Words that take back before a colon where no number follows. */
  CORRECTED("corrected", false),
  /** Words that start what a letter says in the past tense of the examination. */
  EXAM("exam", false),
  /** Words that say since when something lasts: never the heading of findings of another time. */
  LASTS("lasts", false),
  /** Words that tell of the past. */
  PAST("past", false),
  /** Words that set another time apart from the past of an examination. */
  APART("apart", false),
  /** Words that a sentence needs and that say nothing of an eye. */
  PASS("pass", false),
  /** Headings of a part of the examination that may name the eye that it is of. */
  PART("part", false),
  /** Words for a pinhole. */
  PINHOLE("pinhole", false),
  /** Words that say of a means of testing only that it was used. */
  LINK("link", false),
  /** Words that are no slip of spelling, however near they come to a known one. */
  WHOLE("word", false);

  private final String word;
  private final boolean open;

  WordRole(String word, boolean open) {
    this.word = word;
    this.open = open;
  }

  /** Returns the kind of a line that has this role. */
  public String word() {
    return word;
  }

  /** Says whether a department may add words: they only keep more of a note from being read. */
  public boolean isOpen() {
    return open;
  }

  /** Returns the role of a kind of line. */
  public static Optional<WordRole> of(String kind) {
    return List.of(values()).stream().filter(role -> role.word.equals(kind)).findFirst();
  }
}
