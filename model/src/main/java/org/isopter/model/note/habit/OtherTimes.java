package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * The words that may put a clause into another time, give it to another person, leave it open, or
 * make it a plan: last visit, mother, likely, repeat. A clause in which one stands is not read.
 */
public final class OtherTimes {

  /** A label is short: last visit, past ocular history. */
  private static final int LONGEST_LABEL = 7;

  private OtherTimes() {}

  /**
   * Returns the note with an end of the clause before each word that starts another part of the
   * notes behind a comma: what stands before {@code fam hx} is not of the family.
   */
  public static List<Token> parted(List<Token> note) {
    List<Token> parted = new ArrayList<>(note);
    for (int i = 0; i + 1 < note.size(); i++) {
      if (note.get(i).is(",") && startsPart(note.subList(i + 1, note.size()))) {
        parted.set(i, note.get(i).as(Token.Kind.BREAK));
      }
    }
    return parted;
  }

  private static boolean startsPart(List<Token> next) {
    return WordFiles.is(WordRole.SECTION, next.get(0).text()) || isCorrection(next);
  }

  /** Says whether one of the words, a date or a label that nothing is known of is in a clause. */
  public static boolean areIn(List<Token> clause) {
    return clause.stream().anyMatch(OtherTimes::isOther)
        || startsWithDate(clause)
        || isUnknownLabel(clause);
  }

  /** Says whether one of the words, or a date, stands in a label that ends with a colon. */
  public static boolean label(List<Token> clause) {
    int colon = colon(clause);
    return colon > 0
        && (startsWithDate(clause)
            || clause.subList(0, colon).stream().anyMatch(OtherTimes::isOther));
  }

  /** Says whether the clause is a label and nothing else. */
  public static boolean isOnlyLabel(List<Token> clause) {
    return colon(clause) == clause.size() - 1;
  }

  /** Says whether the clause starts with a name and a colon, and nothing is known of the name. */
  public static boolean isUnknownLabel(List<Token> clause) {
    int colon = colon(clause);
    return colon > 0 && !clause.get(0).is(NotRead.NO_PLACE) && UnknownSide.isUnknown(clause.get(0));
  }

  /** Says whether a word at the start, before anything else is said, makes the clause a plan. */
  public static boolean isPlan(List<Token> clause) {
    return WordFiles.is(WordRole.PLAN, clause.get(0).text());
  }

  /** Says whether the clause starts what was found today. */
  public static boolean startNow(List<Token> clause) {
    Token first = clause.get(0);
    boolean heading = first.is(",") && !first.seen().equals(",");
    boolean now =
        clause.subList(0, Math.min(3, clause.size())).stream()
            .anyMatch(token -> WordFiles.is(WordRole.NOW, token.text()));
    return heading || now;
  }

  /** Says whether the clause takes back what stands before it: sorry, left; no, right. */
  public static boolean takeBack(List<Token> clause) {
    String start = clause.get(0).text();
    String two = clause.size() > 1 ? start + " " + clause.get(1).text() : start;
    return WordFiles.is(WordRole.RETRACT, start)
        || WordFiles.is(WordRole.RETRACT, two)
        || isCorrection(clause)
        || isOtherSide(clause);
  }

  /** Says whether the words speak of the sides of more than the item before. */
  public static boolean takeBackAll(List<Token> clause) {
    return takeBack(clause) && clause.stream().noneMatch(OtherTimes::isSide);
  }

  /** Says whether a label takes back: correction: L; behind "corrected:" a number is an acuity. */
  private static boolean isCorrection(List<Token> clause) {
    Token first = clause.get(0);
    boolean label = clause.size() > 1 && clause.get(1).is(":");
    boolean number = clause.stream().anyMatch(token -> token.kind() == Token.Kind.NUMBER);
    return label
        && (WordFiles.is(WordRole.RETRACT, first.text())
            || (WordFiles.is(WordRole.CORRECTED, first.text()) && !number));
  }

  private static boolean isOtherSide(List<Token> clause) {
    Cursor cursor = new Cursor(clause, 0);
    boolean no = WordFiles.is(WordRole.NO, clause.get(0).text());
    cursor.back(no ? 1 : 0);
    cursor.take(",");
    return no && cursor.attempt(Common.SIDES).isPresent() && cursor.atEnd();
  }

  /** Says whether a word names an eye, or both. */
  static boolean isSide(Token token) {
    return Common.side(token).isPresent();
  }

  /** Says whether a word puts what follows it into another time, person or plan. */
  public static boolean isOther(Token token) {
    return WordFiles.is(WordRole.OTHER, token.text())
        || isPerson(token)
        || WordFiles.is(WordRole.PLAN, token.text());
  }

  /** Returns how many words and a colon before the findings name a diagnosis; 0 where none do. */
  public static int diagnosis(List<Token> clause) {
    int colon = colon(clause);
    boolean named =
        colon > 0
            && clause.subList(0, colon).stream().anyMatch(OtherTimes::isDiagnosis)
            && clause.subList(0, colon).stream()
                .allMatch(token -> isDiagnosis(token) || isSide(token));
    return named && colon + 1 < clause.size() ? colon + 1 : 0;
  }

  private static boolean isDiagnosis(Token token) {
    return WordFiles.is(WordRole.LABEL, token.text());
  }

  /** Says whether a word names a person who is not the patient. */
  public static boolean isPerson(Token token) {
    return WordFiles.is(WordRole.PERSON, token.text());
  }

  /** Says whether a word stands for a person who was named before. */
  public static boolean isPronoun(Token token) {
    return WordFiles.is(WordRole.PRONOUN, token.text());
  }

  private static int colon(List<Token> clause) {
    for (int i = 0; i < Math.min(LONGEST_LABEL, clause.size()); i++) {
      if (clause.get(i).is(":")) {
        return i;
      }
    }
    return -1;
  }

  /** Says whether a clause starts with a year, or a day with its month and year. */
  private static boolean startsWithDate(List<Token> clause) {
    boolean year = clause.get(0).text().matches("(?:19|20)\\d\\d");
    boolean apart =
        clause.size() > 4
            && clause.get(0).text().matches("\\d{1,4}")
            && clause.get(1).text().matches("[/.-]")
            && clause.get(2).text().matches("\\d\\d?")
            && clause.get(3).text().equals(clause.get(1).text())
            && clause.get(4).text().matches("\\d\\d|\\d{4}");
    return year || apart || clause.get(0).text().matches("\\d\\d?[.]\\d\\d?[.]\\d{2,4}");
  }
}
