package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Site;

/**
 * The code of a component that is a part of a finding.
 *
 * @param coding the coding or the words that say so
 * @param key the key of the part, or a name for parts that the record says in another way
 * @param part the part of the finding, where there is one of that key
 * @param rule the rule, empty where the code is the part's own
 * @param display the display that is known for the code
 * @param site the eye that the code names
 * @param unit the UCUM code of the unit that the words of the code name
 */
record PartCode(
    Naming coding,
    String key,
    Optional<Part<?, ?>> part,
    String rule,
    Optional<String> display,
    Optional<Site> site,
    Optional<String> unit) {

  private static final String IN_WORDS = RuleId.PART_TEXT;

  /** What names a part, and can be taken. */
  interface Naming {
    /** Takes it by a rule; its display too, where it is the one that is known. */
    void take(String rule, Optional<String> display);
  }

  /** Returns the part that a component is, if it is one of the finding. */
  static Optional<PartCode> of(Vocabulary vocabulary, Place component, Finding<?> finding) {
    Optional<Place> code = component.child("code");
    if (code.isEmpty()) {
      return Optional.empty();
    }
    for (Coding coding : Coding.of(code.get(), t -> isPart(vocabulary, finding, t), vocabulary)) {
      Optional<Part<?, ?>> own = vocabulary.part(finding, coding.token());
      Optional<String> display = vocabulary.display(coding.token());
      if (own.isPresent() && coding.sure()) {
        return Optional.of(
            new PartCode(
                coding::take,
                own.get().key(),
                own,
                Ledger.CATALOGUE,
                display,
                Optional.empty(),
                Optional.empty()));
      }
      Optional<String> alias = vocabulary.habits().part(coding.token()).flatMap(Effect::part);
      if (alias.isPresent() && coding.sure() && isPart(vocabulary, finding, coding.token())) {
        Optional<Part<?, ?>> part = Vocabulary.partNamed(finding, alias.get());
        Optional<Site> site = vocabulary.habits().part(coding.token()).flatMap(Effect::site);
        return Optional.of(
            new PartCode(
                coding::take,
                alias.get(),
                part,
                RuleId.CODE_ALIAS,
                display,
                site,
                Optional.empty()));
      }
    }
    return named(vocabulary, code.get(), finding);
  }

  /** Says whether a published code says so, and not only words. */
  boolean isCoded() {
    return !rule.equals(IN_WORDS);
  }

  /** Takes the code. */
  void take() {
    coding.take(rule, display);
  }

  /** Returns the part that words name, beside no code that others may know. */
  private static Optional<PartCode> named(Vocabulary vocabulary, Place code, Finding<?> finding) {
    List<Place> codings = code.list("coding");
    if (!codings.stream().allMatch(Coding::isLocal)) {
      return Optional.empty();
    }
    Optional<PartCode> text = named(vocabulary, code, "text", finding);
    return text.isPresent() || codings.size() != 1
        ? text
        : named(vocabulary, codings.get(0), "display", finding);
  }

  private static Optional<PartCode> named(
      Vocabulary vocabulary, Place place, String name, Finding<?> finding) {
    String text = place.text(name);
    List<String> words = List.of(CodeText.words(SideText.without(text)).split(" "));
    Optional<Site> eye = SideText.only(text);
    for (int skip = 0; skip < 2 && eye.isEmpty() && words.size() > 1; skip++) {
      // "Right sphere" and "sphere right": no other thing of a refraction has sides.
      int at = skip == 0 ? 0 : words.size() - 1;
      eye = SideText.alone(words.get(at));
      if (eye.isPresent()) {
        words = words.subList(1 - skip, words.size() - skip);
      }
    }
    Optional<Site> site = eye;
    String last = words.get(words.size() - 1);
    Optional<String> unit = words.size() > 1 ? vocabulary.habits().ucum(last) : Optional.empty();
    words = unit.isPresent() ? words.subList(0, words.size() - 1) : words;
    return vocabulary
        .habits()
        .words()
        .part(String.join(" ", words))
        .filter(key -> isKey(finding, key))
        .map(
            key ->
                new PartCode(
                    (rule, display) -> place.take(rule, name),
                    key,
                    Vocabulary.partNamed(finding, key),
                    IN_WORDS,
                    Optional.empty(),
                    site,
                    unit));
  }

  private static boolean isPart(Vocabulary vocabulary, Finding<?> finding, String token) {
    Optional<String> alias = vocabulary.habits().part(token).flatMap(Effect::part);
    return vocabulary.part(finding, token).isPresent()
        || alias.filter(key -> isKey(finding, key)).isPresent();
  }

  private static boolean isKey(Finding<?> finding, String key) {
    boolean prism = finding.id().equals("refraction") && key.startsWith("prism");
    return prism || Vocabulary.partNamed(finding, key).isPresent();
  }
}
