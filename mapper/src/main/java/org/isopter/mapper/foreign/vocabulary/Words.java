package org.isopter.mapper.foreign.vocabulary;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;
import org.isopter.model.text.Memo;
import org.isopter.model.value.Site;

/** The words that others use beside or instead of codes, from the tables of habits. */
public final class Words {

  private static final Pattern WORDS = Pattern.compile(" ");
  private static final Pattern NUMBER = Pattern.compile("\\d*");

  private final Map<String, Site> sides = new LinkedHashMap<>();
  private final Map<String, Site> sidesAlone = new LinkedHashMap<>();
  private final Set<String> sideQuestions = new HashSet<>();
  private final Map<String, Effect> conditions = new HashMap<>();
  private final Set<String> conditionQuestions = new HashSet<>();
  private final Set<String> correctionQuestions = new HashSet<>();
  private final Set<String> noCorrection = new HashSet<>();
  private final Set<String> fillers = new HashSet<>();
  private final Set<String> derivedParts = new HashSet<>();
  private final Set<String> doubts = new HashSet<>();
  private final Set<String> denials = new HashSet<>();
  private final Map<String, Set<String>> harmless = new HashMap<>();
  private final Set<String> harmlessWords = new HashSet<>();
  private final Set<String> togetherHarmful = new HashSet<>();
  private final ChangingPhrases otherwise;
  private final ChangingPhrases otherwiseNamed;
  private final ChangingPhrases otherAcuity;
  private final ChangingPhrases otherCorrection;
  private final ChangingPhrases ofPanels;
  private final Map<String, Effect> titled = new HashMap<>();
  private final Map<String, Effect> titledBeside = new HashMap<>();
  private final Map<String, String> beside = new HashMap<>();
  private final Map<String, String> named = new HashMap<>();
  private final Map<String, String> parts = new HashMap<>();
  private final Map<String, String> answers = new HashMap<>();
  private final Map<String, String> answered = new HashMap<>();
  private final Memo<Boolean> doubting = new Memo<>(text -> !in(doubts, text).isEmpty());
  private final Memo<Boolean> denying = new Memo<>(name -> !in(denials, name).isEmpty());
  private final Memo<List<Effect>> conditionsRead = new Memo<>(this::readConditions);

  /** Reads the tables. */
  Words(Raw tables) {
    sides(tables, "sideWords", sides);
    sides(tables, "sidesAlone", sidesAlone);
    texts(tables, "sideQuestions", sideQuestions);
    for (Raw row : tables.objects("conditions")) {
      Effect effect = Effect.of(row);
      spellings(row).forEach(words -> conditions.put(words, effect));
    }
    texts(tables, "conditionQuestions", conditionQuestions);
    texts(tables, "correctionQuestions", correctionQuestions);
    texts(tables, "noCorrection", noCorrection);
    texts(tables, "fillers", fillers);
    texts(tables, "derivedParts", derivedParts);
    texts(tables, "doubts", doubts);
    texts(tables, "denials", denials);
    texts(tables, "togetherHarmful", togetherHarmful);
    for (Raw row : tables.objects("harmless")) {
      Set<String> names =
          harmless.computeIfAbsent(row.string("of").orElse(""), any -> new HashSet<>());
      spellings(row).forEach(names::add);
    }
    for (Raw row : tables.objects("harmlessWords")) {
      spellings(row).forEach(harmlessWords::add);
    }
    otherwise = new ChangingPhrases(tables, "otherwise", "drugs");
    otherwiseNamed = new ChangingPhrases(tables, "otherwise", "drugs", "otherwiseNamed");
    otherAcuity = new ChangingPhrases(tables, "otherAcuity");
    ofPanels = new ChangingPhrases(tables, "ofPanels");
    otherCorrection = new ChangingPhrases(tables, "otherCorrection");
    for (Raw row : tables.objects("titledFindings")) {
      Effect effect = Effect.of(row);
      spellings(row).forEach(words -> titled.put(words, effect));
    }
    for (Raw row : tables.objects("titledBeside")) {
      Effect effect = Effect.of(row);
      spellings(row).forEach(words -> titledBeside.put(words, effect));
    }
    pairs(tables, "titledBeside", "beside", beside);
    pairs(tables, "namedCodes", "as", named);
    pairs(tables, "partTitles", "part", parts);
    for (Raw row : tables.objects("answeredFindings")) {
      answered.put(row.string("finding").orElseThrow(), row.string("as").orElseThrow());
    }
    for (Raw row : tables.objects("answerWords")) {
      String list = row.string("list").orElseThrow();
      String word = row.string("word").orElseThrow();
      spellings(row).forEach(words -> answers.put(list + "|" + words, word));
    }
  }

  /** Returns the words that name an eye anywhere in a text, in lower case. */
  Map<String, Site> sides() {
    return sides;
  }

  /** Returns the words that name an eye where they are all that is said of the place. */
  Map<String, Site> sidesAlone() {
    return sidesAlone;
  }

  /** Says whether a code, or plain words, ask for the side. */
  public boolean asksForSide(String codeOrWords) {
    return sideQuestions.contains(codeOrWords);
  }

  /** Returns what words say of how something was tested. */
  Map<String, Effect> conditions() {
    return conditions;
  }

  /** Says whether words ask for how something was tested. */
  public boolean asksForCondition(String words) {
    return conditionQuestions.contains(words);
  }

  /** Returns true if words ask for the correction and others answer that there was none. */
  public boolean saysNoCorrection(String asked, String answer) {
    return correctionQuestions.contains(asked) && noCorrection.contains(answer);
  }

  /** Returns true if words name any side, alone or as the name of an eye. */
  public boolean namesSide(String name) {
    return !in(sidesAlone.keySet(), name).isEmpty() || !in(sides.keySet(), name).isEmpty();
  }

  /** Says whether a word between others says nothing of its own. */
  boolean isFiller(String word) {
    return fillers.contains(word);
  }

  /** Returns the word of a text that makes something else of what a code is about. */
  public Optional<String> otherwise(String text, String finding) {
    return otherwise.in(text, finding);
  }

  /** Returns such a word of a name, in which more words do so than in a remark. */
  public Optional<String> otherwiseNamed(String name, String finding) {
    return otherwiseNamed.in(name, finding);
  }

  /** Returns the findings that the trade names by these words. */
  Map<String, Effect> titled() {
    return titled;
  }

  /** Returns what an abbreviation names beside another finding. */
  public Optional<Effect> titledBeside(String words, Set<String> findings) {
    String other = beside.getOrDefault(words, "");
    return findings.contains(other)
        ? Optional.ofNullable(titledBeside.get(words))
        : Optional.empty();
  }

  /** Returns the code of a group or of a coded finding that words name. */
  public Optional<String> named(String words) {
    return Optional.ofNullable(named.get(words));
  }

  /** Returns the key of the part of a finding that words name. */
  public Optional<String> part(String words) {
    return Optional.ofNullable(parts.get(words));
  }

  /** Says whether words name what only follows from the parts of a finding. */
  public boolean isDerivedPart(String words) {
    return derivedParts.contains(words);
  }

  /**
   * Returns true if a component or an extension of this name cannot change what a finding says.
   *
   * @param name the words of a component's code, its {@code system|code}, or a URL
   */
  public boolean isHarmless(String name, String finding) {
    return harmless.getOrDefault("", Set.of()).contains(name)
        || harmless.getOrDefault(finding, Set.of()).contains(name);
  }

  /** Returns true if a word of a text says that what stands beside it is wrong. */
  public boolean doubts(String text) {
    return !text.isBlank() && doubting.of(text);
  }

  /** Returns true if a word of a name says that something was not so. */
  public boolean denies(String name) {
    return !name.isBlank() && denying.of(name);
  }

  /**
   * Returns true if each word of a text is a number, or known to say nothing of a value, and they
   * say nothing together.
   */
  public boolean areHarmless(String text) {
    return !denies(text)
        && in(togetherHarmful, text).isEmpty()
        && text.indexOf('?') < 0
        && WORDS
            .splitAsStream(CodeText.words(text))
            .allMatch(word -> harmlessWords.contains(word) || NUMBER.matcher(word).matches());
  }

  /** Returns the words of a text without those of the conditions of a test that it names. */
  public String withoutConditions(String text) {
    String rest = " " + CodeText.words(text) + " ";
    List<String> longestFirst =
        in(conditions.keySet(), text).stream()
            .sorted(Comparator.comparing(String::length).reversed())
            .toList();
    for (String phrase : longestFirst) {
      rest = rest.replace(" " + phrase + " ", " ");
    }
    return rest;
  }

  /** Returns the words of a text that name a pinhole or near vision, understood or not. */
  public Optional<String> namesOtherAcuity(String text) {
    return otherAcuity.in(text, "");
  }

  /** Returns the words in the name of a panel that say how all of its members were tested. */
  public Optional<String> changesAll(String name) {
    return ofPanels.in(name, "");
  }

  /** Returns the words of a text that name a correction, or that name that there was none. */
  public Optional<String> namesCorrection(String text, boolean none) {
    return otherCorrection.in(text, none ? "unaided" : "corrected");
  }

  /** Returns what the phrases of a text say of another finding or of a part of one. */
  public List<Effect> conditionsIn(String text) {
    return text.isBlank() ? List.of() : conditionsRead.of(text);
  }

  private List<Effect> readConditions(String text) {
    List<String> found = in(conditions.keySet(), text);
    return found.stream()
        .filter(phrase -> found.stream().noneMatch(longer -> isWithin(phrase, longer)))
        .map(conditions::get)
        .filter(effect -> effect.finding().isPresent() || !effect.parts().isEmpty())
        .toList();
  }

  /** In "without glasses" there are no "glasses". */
  private static boolean isWithin(String phrase, String longer) {
    return longer.length() > phrase.length() && (" " + longer + " ").contains(" " + phrase + " ");
  }

  private static List<String> in(Set<String> phrases, String text) {
    if (text.isBlank()) {
      return List.of();
    }
    String spaced = " " + CodeText.words(text) + " ";
    return phrases.stream().filter(phrase -> spaced.contains(" " + phrase + " ")).toList();
  }

  /** Returns the word of a list of answers that other words stand for. */
  public Optional<String> answer(String list, String words) {
    return Optional.ofNullable(answers.get(list + "|" + words));
  }

  /** Returns the code of the statement that a finding is there, where yes or no answers it. */
  public Optional<String> answered(String finding) {
    return Optional.ofNullable(answered.get(finding));
  }

  private static void pairs(Raw tables, String name, String key, Map<String, String> into) {
    for (Raw row : tables.objects(name)) {
      String value = row.string(key).orElseThrow();
      spellings(row).forEach(words -> into.put(words, value));
    }
  }

  private static void sides(Raw tables, String name, Map<String, Site> into) {
    for (Raw row : tables.objects(name)) {
      Site site = Effect.site(row.string("is").orElseThrow());
      spellings(row).forEach(words -> into.put(words, site));
    }
  }

  private static void texts(Raw tables, String name, Set<String> into) {
    tables.list(name).forEach(text -> into.add(text.string().orElseThrow()));
  }

  private static Iterable<String> spellings(Raw row) {
    return row.list("spellings").stream().map(text -> text.string().orElseThrow()).toList();
  }
}
