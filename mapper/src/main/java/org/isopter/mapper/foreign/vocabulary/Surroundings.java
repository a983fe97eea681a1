package org.isopter.mapper.foreign.vocabulary;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.isopter.mapper.json.Raw;

/** What may stand around a value without changing it: codes and words of the tables of habits. */
public final class Surroundings {

  private final Set<String> interpretations = new HashSet<>();
  private final Set<String> categories = new HashSet<>();
  private final Set<String> labels = new HashSet<>();
  private final Set<String> sourceTypes = new HashSet<>();
  private final Set<String> siteWords = new HashSet<>();
  private final Set<String> apart = new HashSet<>();
  private final Set<String> remarks = new HashSet<>();
  private final Set<String> methods = new HashSet<>();

  /** Reads the tables. */
  Surroundings(Raw tables) {
    spellings(tables, "interpretations", interpretations);
    spellings(tables, "categories", categories);
    spellings(tables, "labels", labels);
    texts(tables.list("sourceTypes"), sourceTypes);
    texts(tables.list("siteWords"), siteWords);
    spellings(tables, "questionsApart", apart);
    texts(tables.list("remarkQuestions"), remarks);
    texts(tables.list("methodQuestions"), methods);
  }

  /** Returns true if a code of an interpretation says only how a value lies in its range. */
  public boolean isInterpretation(String code) {
    return interpretations.contains(code);
  }

  /** Returns true if all words of an interpretation say only how a value lies in its range. */
  public boolean interprets(String text) {
    return consistsOf(interpretations, text);
  }

  /** Returns true if a category, {@code system|code}, is one of things found and measured. */
  public boolean isCategory(String token) {
    return categories.contains(token);
  }

  /** Returns true if all words of a category name a department or a kind of test. */
  public boolean categorises(String text) {
    return consistsOf(categories, text);
  }

  /**
   * Returns true if a label, {@code system|code}, says that a resource is not whole or not sure.
   */
  public boolean isLabelOfDoubt(String token) {
    return labels.contains(token);
  }

  /** Returns true if a value may be taken from a resource of a type without being computed. */
  public boolean isSource(String type) {
    return sourceTypes.contains(type);
  }

  /** Returns true if all words may stand beside the name of an eye and name the same. */
  public boolean namesSite(String text) {
    return consistsOf(siteWords, text);
  }

  /** Returns true if a question, or a section of a form, is not about a test or its conditions. */
  public boolean isApart(String question) {
    return apart.contains(Habits.plain(question));
  }

  /** Returns true if a question of a form asks for the method of what is tested beside it. */
  public boolean asksForMethod(String question) {
    return methods.contains(Habits.plain(question));
  }

  /** Returns true if a question of a form asks for a remark. */
  public boolean asksForRemark(String question) {
    return remarks.contains(Habits.plain(question));
  }

  /**
   * Returns true if a text is a sequence of phrases of a set; an empty one, or a question, is none.
   */
  private static boolean consistsOf(Set<String> phrases, String text) {
    String words = CodeText.words(text);
    boolean asked = text.indexOf('?') >= 0;
    return !asked && !words.isEmpty() && startsWith(phrases, List.of(words.split(" ", -1)));
  }

  private static boolean startsWith(Set<String> phrases, List<String> words) {
    for (int length = Math.min(3, words.size()); length > 0; length--) {
      boolean known = phrases.contains(String.join(" ", words.subList(0, length)));
      List<String> rest = words.subList(length, words.size());
      if (known && (rest.isEmpty() || startsWith(phrases, rest))) {
        return true;
      }
    }
    return false;
  }

  private static void spellings(Raw tables, String name, Set<String> into) {
    tables.objects(name).forEach(row -> texts(row.list("spellings"), into));
  }

  private static void texts(List<Raw> texts, Set<String> into) {
    texts.forEach(text -> into.add(text.string().orElseThrow()));
  }
}
