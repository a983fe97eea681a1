package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.PlacedLeaf;

/**
 * Reads the words that stand beside a code that is known. They may say more than the code, such as
 * that it was through a pinhole, or something else, such as that it is a target and no measurement.
 */
final class WordsBeside {

  private static final String RULE = RuleId.CODE_WORDS;

  private final Vocabulary vocabulary;
  private final CodeText text;

  WordsBeside(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.text = new CodeText(vocabulary);
  }

  /** Adds what the words of a code say beside its codings; nothing of them is taken. */
  void add(Meaning meaning, Place code) throws Refusal {
    word(meaning, code, "text", Optional.empty());
    for (Place coding : code.list("coding")) {
      String token = Coding.single(coding, vocabulary::knows, vocabulary).token();
      word(meaning, coding, "display", vocabulary.display(token));
      if (Coding.isLocal(coding)) {
        refuseOtherwise(meaning, coding.text("code"), PlacedLeaf.step(coding.at(), "code"));
      }
      if (Coding.isLocal(coding) && coding.text("display").isBlank()) {
        sign(meaning, coding);
      }
    }
  }

  /** A code of a department may be an abbreviation that the trade knows, such as VA-PH. */
  private void sign(Meaning meaning, Place coding) throws Refusal {
    String said = SideText.without(coding.text("code"));
    if (text.read(said).isPresent()) {
      word(meaning, coding, "code", Optional.empty());
    }
  }

  /**
   * Says whether the published codes that are not known leave it open that the text is right: they
   * have no name, or one that means the same.
   */
  boolean leavesOpen(Place code, Effect title) {
    for (Place coding : code.list("coding")) {
      String display = SideText.without(coding.text("display"));
      boolean same =
          text.read(Vocabulary.withoutTag(display))
              .filter(said -> said.get(0).finding().equals(title.finding()))
              .isPresent();
      if (!Coding.isLocal(coding) && !display.isBlank() && !same) {
        return false;
      }
    }
    return true;
  }

  /** Refuses words of a code that make something else of what it is about. */
  void refuseOtherwise(Meaning meaning, Place code) throws Refusal {
    refuseOtherwise(meaning, code.text("text"), PlacedLeaf.step(code.at(), "text"));
    for (Place coding : code.list("coding")) {
      String at = PlacedLeaf.step(coding.at(), "display");
      String token = Coding.single(coding, vocabulary::knows, vocabulary).token();
      if (vocabulary.display(token).isEmpty()) {
        refuseOtherwise(meaning, coding.text("display"), at);
      }
    }
  }

  /** Refuses words around a finding that make something else of it; they are not quoted. */
  void refuseOtherwise(Meaning meaning, List<Place> concepts) throws Refusal {
    for (Place concept : concepts) {
      refuseWord(meaning, concept.text("text"), concept.at());
      for (Place coding : concept.list("coding")) {
        refuseWord(meaning, coding.text("display"), coding.at());
      }
    }
  }

  /** Refuses a name that makes something else of a finding; it is not quoted. */
  void refuseWord(Meaning meaning, String said, String at) throws Refusal {
    Optional<String> word =
        vocabulary.habits().words().otherwiseNamed(said, meaning.topic().orElse(""));
    if (word.isPresent()) {
      throw disagree(word.get(), at, "what was found in this examination");
    }
  }

  private void word(Meaning meaning, Place place, String name, Optional<String> known)
      throws Refusal {
    String said = place.text(name);
    if (said.isBlank() || known.filter(k -> Vocabulary.sameName(k, said)).isPresent()) {
      return;
    }
    String at = PlacedLeaf.step(place.at(), name);
    refuseOtherwise(meaning, said, at);
    if (said.indexOf('?') >= 0 && !place.at().startsWith("/component/")) {
      throw Qualifiers.unread(at, "a question mark");
    }
    Optional<List<Effect>> effects = text.read(SideText.without(Vocabulary.withoutTag(said)));
    if (effects.isEmpty()) {
      refuseOtherAcuity(meaning, said, at);
      refuseOtherCorrection(meaning, said, at);
      refuseUnfamiliar(place, name, said, at);
    }
    boolean more = effects.filter(all -> saysMore(meaning, all)).isPresent();
    for (Effect effect : effects.orElse(List.of())) {
      refuseOtherFinding(meaning, effect, said, at);
      meaning.add(effect, at);
    }
    if (more) {
      place.ledger().used(RULE);
    }
  }

  /** Refuses words of which one is not known, in whatever language: it may be "target". */
  private void refuseUnfamiliar(Place place, String name, String said, String at) throws Refusal {
    boolean repeated =
        name.equals("text")
            && place.list("coding").stream()
                .filter(coding -> !Coding.isLocal(coding))
                .anyMatch(coding -> Vocabulary.sameName(coding.text("display"), said));
    if (!repeated && !vocabulary.isFamiliar(said)) {
      throw Qualifiers.unread(at, "a name with a word that is not known");
    }
  }

  private static boolean saysMore(Meaning meaning, List<Effect> effects) {
    Effect title = effects.get(0);
    return effects.size() > 1
        || !title.parts().isEmpty()
        || title.finding().filter(finding -> !meaning.names(finding)).isPresent();
  }

  private void refuseOtherwise(Meaning meaning, String said, String at) throws Refusal {
    Optional<String> word =
        vocabulary.habits().words().otherwiseNamed(said, meaning.topic().orElse(""));
    if (word.isPresent()) {
      throw disagree(said, at, "what was found, and nothing that is \"" + word.get() + "\"");
    }
  }

  /** Refuses words of an acuity that are not known and may name a pinhole or near vision. */
  void refuseOtherAcuity(Meaning meaning, String said, String at) throws Refusal {
    Optional<String> other = vocabulary.habits().words().namesOtherAcuity(said);
    if (meaning.isDistance() && other.isPresent()) {
      // The words around may tell what was measured: they are not quoted.
      String wanted = "words that are known where they name a pinhole or near vision";
      throw disagree(other.get(), at, wanted);
    }
  }

  /** Refuses words of which not all are known, and one names another correction than the code. */
  private void refuseOtherCorrection(Meaning meaning, String said, String at) throws Refusal {
    Optional<String> coded = Optional.ofNullable(meaning.parts().get("correction"));
    boolean unaided = coded.equals(Optional.of("unaided"));
    Optional<String> other = vocabulary.habits().words().namesCorrection(said, !unaided);
    if (coded.isPresent() && other.isPresent()) {
      throw disagree(other.get(), at, "words that fit the code, which says " + coded.get());
    }
  }

  private void refuseOtherFinding(Meaning meaning, Effect effect, String said, String at)
      throws Refusal {
    Optional<String> finding = meaning.finding();
    boolean other =
        effect.finding().isPresent()
            && !effect.finding().equals(finding)
            && !(vocabulary.isAcuity(effect.finding()) && vocabulary.isAcuity(finding));
    if (other) {
      throw disagree(said, at, "the name of what the code says");
    }
  }

  private static Refusal disagree(String said, String at, String wanted) {
    return Refusal.of(Why.CODES_DISAGREE, at, "\"" + said + "\"", wanted);
  }
}
