package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;

/**
 * What a form calls a question or a group: codes, words, and the unit that the words end with.
 *
 * @param codings its codes
 * @param text its words, without the unit and the mark of a question
 * @param shown what the response calls it, where it differs
 * @param unit the unit in brackets behind the words, where it is one that is known
 * @param isEye whether it names an eye and nothing else
 */
record FormLabel(
    List<Raw.Obj> codings,
    String text,
    Optional<String> shown,
    Optional<String> unit,
    boolean isEye) {

  /** The member of a question under which the words of the response stand. */
  static final String SHOWN = "shown in the response";

  private static final Pattern UNIT = Pattern.compile("(.*\\S)\\s*[(\\[]\\s*([^()]+?)\\s*[)\\]]");

  FormLabel {
    codings = List.copyOf(codings);
  }

  /** Reads the label of an item of a form. */
  static FormLabel of(Vocabulary vocabulary, Raw.Obj question) {
    List<Raw.Obj> codings = question.objects("code");
    String words = bare(question.string("text").orElse(""));
    Matcher bracketed = UNIT.matcher(words);
    Optional<String> unit =
        bracketed.matches()
            ? Optional.of(bracketed.group(2))
                .filter(spelling -> vocabulary.habits().ucum(spelling).isPresent())
            : Optional.empty();
    String text = unit.isPresent() ? bracketed.group(1) : words;
    Optional<String> shown =
        question.string(SHOWN).map(FormLabel::bare).filter(other -> !other.equals(words));
    boolean eye = isEye(vocabulary, codings, text);
    return new FormLabel(codings, text, shown, unit, eye);
  }

  private static String bare(String text) {
    return text.strip().replaceAll("\\s*[:?]+$", "");
  }

  private static boolean isEye(Vocabulary vocabulary, List<Raw.Obj> codings, String text) {
    boolean coded =
        codings.stream()
            .map(coding -> coding.string("system").orElse("") + "|" + code(coding))
            .allMatch(
                token ->
                    vocabulary.habits().site(token).isPresent()
                        || vocabulary.habits().isEye(token)
                        || vocabulary.habits().qualifier(token).isPresent());
    boolean worded = text.isEmpty() ? !codings.isEmpty() : SideText.wholly(text).isPresent();
    return coded && worded;
  }

  private static String code(Raw.Obj coding) {
    return coding.string("code").orElse("");
  }

  /** Says whether it says nothing at all. */
  boolean isEmpty() {
    return codings.isEmpty() && text.isEmpty();
  }

  /** Returns it as a concept. */
  Raw.Obj concept() {
    return concept(codings, text);
  }

  /** Returns it as a concept whose words are those of an inner label as well. */
  Raw.Obj with(FormLabel inner) {
    List<Raw.Obj> all = new ArrayList<>(codings);
    all.addAll(inner.codings);
    return concept(all, (text + " " + inner.text).strip());
  }

  /** Returns labels of eyes as one body site; where they differ it names several. */
  static Raw.Obj site(List<FormLabel> eyes) {
    List<Raw.Obj> all = new ArrayList<>();
    List<String> words = new ArrayList<>();
    for (FormLabel eye : eyes) {
      all.addAll(eye.codings);
      words.add(eye.text);
    }
    return concept(all, String.join(", ", words.stream().distinct().toList()));
  }

  private static Raw.Obj concept(List<Raw.Obj> codings, String text) {
    Map<String, Raw> concept = new LinkedHashMap<>();
    if (!codings.isEmpty()) {
      concept.put("coding", Raw.of(codings));
    }
    if (!text.isBlank()) {
      concept.put("text", Raw.of(text));
    }
    return new Raw.Obj(concept);
  }
}
