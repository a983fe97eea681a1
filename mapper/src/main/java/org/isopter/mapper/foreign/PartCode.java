package org.isopter.mapper.foreign;

import java.util.Optional;
import org.isopter.model.shape.Finding;
import org.isopter.model.shape.Part;
import org.isopter.model.value.Site;

/**
 * The code of a component that is a part of a finding.
 *
 * @param coding the coding that says so
 * @param key the key of the part, or a name for parts that the record says in another way
 * @param part the part of the finding, where there is one of that key
 * @param rule the rule, empty where the code is the part's own
 * @param display the display that is known for the code
 * @param site the eye that the code names
 */
record PartCode(
    Coding coding,
    String key,
    Optional<Part<?, ?>> part,
    String rule,
    Optional<String> display,
    Optional<Site> site) {

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
                coding, own.get().key(), own, Ledger.CATALOGUE, display, Optional.empty()));
      }
      Optional<String> alias = vocabulary.habits().part(coding.token()).flatMap(Effect::part);
      if (alias.isPresent() && coding.sure() && isPart(vocabulary, finding, coding.token())) {
        Optional<Part<?, ?>> part = Vocabulary.partNamed(finding, alias.get());
        Optional<Site> site = vocabulary.habits().part(coding.token()).flatMap(Effect::site);
        return Optional.of(new PartCode(coding, alias.get(), part, "code-alias", display, site));
      }
    }
    return Optional.empty();
  }

  /** Takes the code. */
  void take() {
    coding.take(rule, display);
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
