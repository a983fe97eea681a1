package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
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

  private static final Pattern DATE =
      Pattern.compile("\\d{1,4}([/.-])\\d{1,2}\\1\\d{2,4}|(?:19|20)\\d\\d(?!\\d)");

  private static final Set<String> STARTS_NOW =
      WordFiles.of(WordRole.STARTS).stream()
          .map(phrase -> String.join(" ", Lexer.words(phrase)))
          .collect(Collectors.toUnmodifiableSet());

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
            || clause.subList(0, colon).stream()
                .anyMatch(token -> isOther(token) || WordFiles.is(WordRole.RECORD, token.text())));
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

  /** Says whether no other word puts a clause out of this examination: registrar review. */
  public static boolean isOnlyOfPlan(List<Token> clause) {
    return clause.stream()
        .filter(token -> isOther(token) || WordFiles.is(WordRole.RECORD, token.text()))
        .allMatch(token -> WordFiles.is(WordRole.PLAN, token.text()));
  }

  /** Says whether the clause starts what was found today. */
  public static boolean startNow(List<Token> clause) {
    boolean now =
        clause.subList(0, Math.min(3, clause.size())).stream()
            .anyMatch(token -> WordFiles.is(WordRole.NOW, token.text()));
    return now || (startPart(clause) && STARTS_NOW.contains(words(clause.get(0).seen())));
  }

  /** Says whether the clause starts with the heading of a part of the examination: fundus. */
  public static boolean startPart(List<Token> clause) {
    Token first = clause.get(0);
    return first.is(",") && !first.seen().equals(",");
  }

  /** Says whether the clause starts with the patient. */
  public static boolean isPatient(List<Token> clause) {
    return startPart(clause) && Set.of("pt", "patient").contains(words(clause.get(0).seen()));
  }

  private static String words(String seen) {
    return String.join(" ", Lexer.words(seen)).replaceAll(" ?[:.]$", "");
  }

  /** Says whether a clause says since when something lasts, and names no visit: since yesterday. */
  public static boolean lasts(List<Token> clause) {
    return clause.stream().anyMatch(token -> WordFiles.is(WordRole.LASTS, token.text()))
        && clause.stream().noneMatch(token -> WordFiles.is(WordRole.CARE, token.text()));
  }

  /** Says whether the words are of the history of the patient, and of no visit or finding in it. */
  static boolean isHistoryWord(Token token) {
    return WordFiles.is(WordRole.HISTORY, token.text());
  }

  /** Says whether a clause is of the history of the patient, and names no other visit. */
  public static boolean isHistory(List<Token> clause) {
    return clause.stream().anyMatch(OtherTimes::isHistoryWord) && !namesVisit(clause);
  }

  /** Says whether a clause may name another visit or who found something there. */
  public static boolean namesVisit(List<Token> clause) {
    return startsWithDate(clause)
        || clause.stream()
            .filter(token -> !isHistoryWord(token))
            .anyMatch(token -> isOther(token) || WordFiles.is(WordRole.CARE, token.text()));
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
    boolean number = clause.stream().anyMatch(token -> token.isNumber());
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

  /**
   * Returns how many words and a colon before the findings name a diagnosis, who writes, or whom
   * and of what age the note is about; 0 where none do.
   */
  public static int diagnosis(List<Token> clause) {
    int colon = colon(clause);
    if (colon < 1 || colon + 1 == clause.size()) {
      return 0;
    }
    int age = age(clause.subList(0, colon));
    List<Token> words = clause.subList(age, colon);
    boolean named =
        (age > 0 || words.stream().anyMatch(OtherTimes::isDiagnosis))
            && words.stream().allMatch(token -> isDiagnosis(token) || isSide(token));
    return named ? colon + 1 : 0;
  }

  /** Returns how many words at the start name a patient of an age: 67 yo F. Alone it is a time. */
  private static int age(List<Token> label) {
    int words = label.get(0).text().matches("[1-9]\\d?") ? 1 : label.size();
    while (words < label.size() && WordFiles.is(WordRole.AGE, label.get(words).text())) {
      words++;
    }
    boolean patient = words < label.size() && WordFiles.is(WordRole.SEX, label.get(words).text());
    return patient ? words + 1 : 0;
  }

  /** Says whether the only numbers of a clause are those of a date. */
  public static boolean hasNoNumberButDate(List<Token> clause) {
    String seen = clause.stream().map(Token::text).collect(Collectors.joining());
    return DATE.matcher(seen).replaceAll("").chars().noneMatch(Character::isDigit);
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
