package org.isopter.mapper.foreign.value;

import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Truth;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.answer.tissue.Presence;

/** A value that says that something is there or is not: a truth, a code, or a word. */
public final class YesOrNo {

  private static final String RULE = RuleId.ANSWER_TRUTH;
  private static final String LIST = "presence";

  private final Vocabulary vocabulary;
  private final Place holder;

  public YesOrNo(Vocabulary vocabulary, Place holder) {
    this.vocabulary = vocabulary;
    this.holder = holder;
  }

  /** Says whether the value is yes or no; nothing is taken. */
  public boolean isPresent() {
    return Truth.of(holder).isPresent() || coding().isPresent() || word().isPresent();
  }

  /** Takes the value and returns it. */
  public boolean take() {
    Optional<Coding> coding = coding();
    if (coding.isPresent()) {
      coding.get().take(RULE, Optional.empty());
      return isPresent(coding.get());
    }
    Optional<Boolean> truth = Truth.of(holder);
    holder.take(RULE, "valueBoolean");
    if (truth.isEmpty()) {
      holder.take(RULE, "valueString");
      holder.child("valueCodeableConcept").ifPresent(concept -> concept.take(RULE, "text"));
    }
    return truth.or(this::word).orElseThrow();
  }

  private Optional<Coding> coding() {
    return holder.child("valueCodeableConcept").stream()
        .flatMap(c -> Coding.of(c, t -> presence(t).isPresent(), vocabulary).stream())
        .filter(coding -> coding.sure() && presence(coding.token()).isPresent())
        .findFirst();
  }

  private boolean isPresent(Coding coding) {
    return presence(coding.token()).filter("present"::equals).isPresent();
  }

  /** A word in a concept counts where no coding of it has a code that others may know. */
  private Optional<Boolean> word() {
    Optional<Place> concept = holder.child("valueCodeableConcept");
    boolean published =
        concept.stream().flatMap(c -> c.list("coding").stream()).anyMatch(c -> !Coding.isLocal(c));
    String text = published ? "" : concept.map(c -> c.text("text")).orElse("");
    String words = CodeText.words(holder.text("valueString") + text);
    return words.equals("present") || words.equals("absent")
        ? Optional.of(words.equals("present"))
        : vocabulary.habits().words().answer(LIST, words).map("present"::equals);
  }

  /** Present or absent; what is equivocal is neither. */
  private Optional<String> presence(String token) {
    for (Presence presence : Presence.values()) {
      if (presence.code().token().equals(token)) {
        return Optional.of(presence.word()).filter(word -> !word.equals("equivocal"));
      }
    }
    return vocabulary.habits().answer(LIST, token);
  }
}
