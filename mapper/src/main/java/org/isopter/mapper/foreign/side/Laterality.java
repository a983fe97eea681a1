package org.isopter.mapper.foreign.side;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;

/** Finds the side where it is told apart from the eye: in an extension or in a component. */
final class Laterality {

  private final Vocabulary vocabulary;
  private final SideCodes codes;

  Laterality(Vocabulary vocabulary, SideCodes codes) {
    this.vocabulary = vocabulary;
    this.codes = codes;
  }

  /** Takes what an observation tells around its body site. */
  void of(Place observation) {
    extensions(observation);
    observation.child("code").ifPresent(this::extensions);
    observation.list("component").forEach(this::component);
  }

  /** Takes extensions that are called laterality and hold nothing but a laterality. */
  void extensions(Place holder) {
    for (Place extension : holder.list("extension")) {
      String url = extension.text("url").toLowerCase(Locale.ROOT);
      if (url.substring(url.lastIndexOf('/') + 1).contains("laterality")) {
        lateralityCodings(extension).forEach(c -> lateralityCoding(extension, c));
        Optional<Place> concept = extension.child("valueCodeableConcept");
        boolean worded =
            concept.filter(c -> codes.word(c, RuleId.SIDE_EXTENSION, "text")).isPresent()
                || codes.word(extension, RuleId.SIDE_EXTENSION, "valueCode", "valueString");
        if (worded || codes.letter(extension, RuleId.SIDE_EXTENSION)) {
          extension.take(RuleId.SIDE_EXTENSION, "url");
        }
      }
    }
  }

  /** Takes a component that asks for the laterality and is answered by nothing but a side. */
  private void component(Place component) {
    Optional<Place> asked = component.child("code").filter(this::asksForSide);
    if (asked.isEmpty()) {
      return;
    }
    boolean coded = false;
    for (Place concept : component.child("valueCodeableConcept").stream().toList()) {
      for (Coding coding : Coding.of(concept, codes::isSite, vocabulary)) {
        coded |= codes.qualifier(coding, RuleId.SIDE_COMPONENT) || codes.site(coding);
      }
      coded |= codes.word(concept, RuleId.SIDE_COMPONENT, "text");
      for (Place coding : concept.list("coding")) {
        coded |=
            Coding.isLocal(coding) && codes.word(coding, RuleId.SIDE_COMPONENT, "display", "code");
      }
    }
    if (coded || codes.word(component, RuleId.SIDE_COMPONENT, "valueCode", "valueString")) {
      asked.get().takeAll(RuleId.SIDE_COMPONENT);
    }
  }

  private boolean asksForSide(Place code) {
    boolean coded =
        Coding.of(code, vocabulary.habits().words()::asksForSide, vocabulary).stream()
            .anyMatch(coding -> vocabulary.habits().words().asksForSide(coding.token()));
    List<Place> codings = code.list("coding");
    String display =
        codings.size() == 1 && Coding.isLocal(codings.get(0)) ? codings.get(0).text("display") : "";
    return coded
        || vocabulary.habits().words().asksForSide(Habits.plain(code.text("text")))
        || vocabulary.habits().words().asksForSide(Habits.plain(display));
  }

  private List<Coding> lateralityCodings(Place extension) {
    Optional<Place> concept = extension.child("valueCodeableConcept");
    if (concept.isPresent()) {
      return Coding.of(concept.get(), codes::isQualifier, vocabulary);
    }
    return extension.child("valueCoding").stream()
        .map(coding -> Coding.single(coding, codes::isQualifier, vocabulary))
        .toList();
  }

  private void lateralityCoding(Place extension, Coding coding) {
    if (codes.qualifier(coding, RuleId.SIDE_EXTENSION) || codes.site(coding)) {
      extension.take(RuleId.SIDE_EXTENSION, "url");
    }
  }
}
