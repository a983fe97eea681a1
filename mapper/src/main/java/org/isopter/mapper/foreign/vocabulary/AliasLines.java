package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.json.Raw;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.Fault;

/** Turns lines of aliases into rows of the tables of habits, checked against what is known. */
final class AliasLines {

  private static final Set<String> EYES = Set.of("right", "left", "both");
  private static final Set<String> NOTATIONS =
      Set.of("logMAR", "decimal", "letters", "N", "M", "J");
  private static final String WANTED =
      "code, name, part, condition, method, unit, notation, answer, eye, category, harmless or note";

  private final Vocabulary vocabulary;
  private final Map<String, List<Raw>> rows = new LinkedHashMap<>();

  AliasLines(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Returns the rows by the names of their tables. */
  Map<String, List<Raw>> rows() {
    return rows;
  }

  /** Adds a phrase of a line; returns what is wrong with it. */
  Optional<Fault> add(PhraseLine line, String phrase) {
    List<String> words = List.of(line.meaning().split("\\s+", 0));
    String what = words.get(0);
    String first = words.size() > 1 ? words.get(1) : "";
    String second = words.size() > 2 ? words.get(2) : "";
    Optional<Code> code = code(phrase);
    boolean coded = code.isPresent();
    if (coded && vocabulary.knows(code.get().token())) {
      return fault(line, phrase, "a code that has no meaning yet");
    }
    Map<String, String> row = new LinkedHashMap<>();
    code.ifPresent(c -> c.into(row));
    return switch (what) {
      case "code" -> coded ? finding(line, "codes", row, first, second) : noCode(line, phrase);
      case "name" -> coded ? noWords(line, phrase) : name(line, row, first, phrase);
      case "part" -> part(line, row, first, phrase, coded);
      case "condition" -> condition(line, row, first, second, phrase, coded);
      case "method" -> method(line, row, first, phrase, coded);
      case "unit" -> unit(line, first, phrase);
      case "notation" -> notation(line, first, phrase);
      case "answer" -> answer(line, row, first, second, phrase, coded);
      case "eye" -> coded ? eye(line, row, first) : noCode(line, phrase);
      case "category" -> put("categories", Map.of(), category(phrase, coded));
      case "harmless" -> harmless(line, first, phrase, coded);
      case "note" ->
          NoteWords.isFree(phrase)
              ? put("harmlessWords", Map.of(), CodeText.words(phrase))
              : fault(line, phrase, "one word of four letters or more without a meaning");
      default -> fault(line, what, WANTED);
    };
  }

  private Optional<Fault> finding(
      PhraseLine line, String table, Map<String, String> row, String id, String eye) {
    if (!isFinding(id)) {
      return fault(line, id, "the id of a finding, or acuity");
    }
    if (!eye.isEmpty() && !EYES.contains(eye)) {
      return fault(line, eye, "right, left or both");
    }
    row.put("finding", id);
    if (!eye.isEmpty()) {
      row.put("site", eye);
    }
    return put(table, row);
  }

  private Optional<Fault> name(PhraseLine line, Map<String, String> row, String id, String words) {
    if (!isFinding(id)) {
      return fault(line, id, "the id of a finding, or acuity");
    }
    if (vocabulary.titled(words).isPresent()) {
      return fault(line, words, "words that have no meaning yet");
    }
    row.put("finding", id);
    return put("titledFindings", row, Habits.plain(words));
  }

  private Optional<Fault> part(
      PhraseLine line, Map<String, String> row, String key, String phrase, boolean coded) {
    if (parts(key).isEmpty()) {
      return fault(line, key, "the name of a part of a finding");
    }
    row.put("part", key);
    return coded ? put("parts", row) : put("partTitles", row, CodeText.words(phrase));
  }

  private Optional<Fault> condition(
      PhraseLine line,
      Map<String, String> row,
      String key,
      String word,
      String phrase,
      boolean coded) {
    boolean known =
        parts(key).stream()
            .anyMatch(
                part ->
                    part.spec() instanceof Spec.Coded spec
                        && spec.answers().byWord(word).isPresent());
    if (!known) {
      return fault(line, key + " " + word, "a part of a finding and one of its answers");
    }
    Map<String, Raw> whole = raw(row);
    whole.put("parts", new Raw.Obj(Map.of(key, Raw.of(word))));
    if (coded) {
      whole.put("rule", Raw.of(RuleId.CONDITION_CODED));
    } else {
      whole.put("spellings", Raw.of(List.of(Raw.of(CodeText.words(phrase)))));
    }
    return add(coded ? "codes" : "conditions", new Raw.Obj(whole));
  }

  private Optional<Fault> method(
      PhraseLine line, Map<String, String> row, String word, String phrase, boolean coded) {
    boolean known =
        vocabulary.catalogue().all().stream()
            .anyMatch(f -> f.methods().flatMap(m -> m.byWord(word)).isPresent());
    if (!known) {
      return fault(line, word, "a technique of a finding");
    }
    row.put("method", word);
    return coded ? put("methods", row) : put("conditions", row, CodeText.words(phrase));
  }

  private Optional<Fault> unit(PhraseLine line, String ucum, String phrase) {
    if (vocabulary.habits().ucum(ucum).filter(ucum::equals).isEmpty()) {
      return fault(line, ucum, "the UCUM code of a unit that a finding may have");
    }
    return vocabulary.habits().ucum(phrase).isPresent()
        ? fault(line, phrase, "a spelling that has no meaning yet")
        : put("units", Map.of("ucum", ucum), Habits.plain(phrase));
  }

  private Optional<Fault> notation(PhraseLine line, String name, String phrase) {
    return NOTATIONS.contains(name) && vocabulary.habits().notation(phrase).isEmpty()
        ? put("notations", Map.of("text", name), Habits.plain(phrase))
        : fault(line, name + " as \"" + phrase + "\"", "logMAR, decimal, letters, N, M or J");
  }

  private Optional<Fault> answer(
      PhraseLine line,
      Map<String, String> row,
      String list,
      String word,
      String phrase,
      boolean coded) {
    if (answers().noneMatch(a -> a.id().equals(list) && a.byWord(word).isPresent())) {
      return fault(line, list + " " + word, "a list of answers and one of them");
    }
    row.put("list", list);
    row.put("word", word);
    return coded ? put("answers", row) : put("answerWords", row, CodeText.words(phrase));
  }

  private Optional<Fault> eye(PhraseLine line, Map<String, String> row, String eye) {
    if (!EYES.contains(eye)) {
      return fault(line, eye, "right, left or both");
    }
    row.put("is", eye);
    return put("sites", row);
  }

  private Optional<Fault> harmless(PhraseLine line, String id, String phrase, boolean coded) {
    if (!id.isEmpty() && !isFinding(id)) {
      return fault(line, id, "the id of a finding, or nothing");
    }
    boolean address = phrase.contains("://") && !coded;
    String name = coded ? phrase.replace('#', '|') : address ? phrase : CodeText.words(phrase);
    return put("harmless", id.isEmpty() ? Map.of() : Map.of("of", id), name);
  }

  private static String category(String phrase, boolean coded) {
    return coded ? phrase.replace('#', '|') : CodeText.words(phrase);
  }

  private boolean isFinding(String id) {
    return id.equals(Effect.ACUITY) || vocabulary.catalogue().byId(id).isPresent();
  }

  private List<Part<?, ?>> parts(String key) {
    List<Part<?, ?>> found = new ArrayList<>();
    for (Finding<?> finding : vocabulary.catalogue().all()) {
      Vocabulary.partNamed(finding, key).ifPresent(found::add);
    }
    return found;
  }

  private Stream<Answers> answers() {
    return vocabulary.catalogue().all().stream()
        .flatMap(finding -> finding.layout().variants().stream())
        .flatMap(AliasLines::specs)
        .filter(Spec.Coded.class::isInstance)
        .map(spec -> ((Spec.Coded) spec).answers());
  }

  private static Stream<Spec> specs(Variant variant) {
    List<Spec> specs = new ArrayList<>(variant.value().stream().toList());
    variant.parts().forEach(part -> specs.add(part.spec()));
    return specs.stream();
  }

  private Optional<Fault> put(String table, Map<String, String> row) {
    return add(table, new Raw.Obj(raw(row)));
  }

  private Optional<Fault> put(String table, Map<String, String> row, String spelling) {
    Map<String, Raw> whole = raw(row);
    whole.put("spellings", Raw.of(List.of(Raw.of(spelling))));
    return add(table, new Raw.Obj(whole));
  }

  private Optional<Fault> add(String table, Raw row) {
    rows.computeIfAbsent(table, any -> new ArrayList<>()).add(row);
    return Optional.empty();
  }

  private static Map<String, Raw> raw(Map<String, String> row) {
    Map<String, Raw> raw = new LinkedHashMap<>();
    row.forEach((name, text) -> raw.put(name, Raw.of(text)));
    return raw;
  }

  private static Optional<Fault> noCode(PhraseLine line, String phrase) {
    return fault(line, phrase, "a code, as system#code");
  }

  private static Optional<Fault> noWords(PhraseLine line, String phrase) {
    return fault(line, phrase, "words");
  }

  private static Optional<Fault> fault(PhraseLine line, String seen, String wanted) {
    return Optional.of(Fault.of(line.place(), "\"" + seen + "\"", wanted));
  }

  private static Optional<Code> code(String phrase) {
    int hash = phrase.lastIndexOf('#');
    return hash <= 0 || hash == phrase.length() - 1
        ? Optional.empty()
        : Optional.of(new Code(phrase.substring(0, hash), phrase.substring(hash + 1)));
  }

  /** A code of a department. */
  private record Code(String system, String code) {
    String token() {
      return system + "|" + code;
    }

    void into(Map<String, String> row) {
      row.put("system", system);
      row.put("code", code);
    }
  }
}
