package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.side.Sides;
import org.isopter.mapper.foreign.value.ForeignValues;
import org.isopter.mapper.foreign.value.YesOrNo;
import org.isopter.mapper.foreign.vocabulary.CodedStatement;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Shorthand;
import org.isopter.mapper.foreign.vocabulary.Topic;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Site;

/**
 * Takes what is said as a whole: a text in shorthand, or a coded finding, which stands as the value
 * or as the code itself.
 */
final class WholeStatement {

  private static final String TEXT = RuleId.SHORTHAND_TEXT;
  private static final String AS_VALUE = RuleId.FINDING_AS_VALUE;
  private static final String IN_CODE = RuleId.FINDING_IN_CODE;

  private final Vocabulary vocabulary;
  private final Place holder;
  private final Meaning meaning;
  private final List<Meaning.Side> sides;
  private final Qualified qualified;
  private final YesOrNo truth;

  WholeStatement(Vocabulary vocabulary, Place holder, Meaning meaning, List<Meaning.Side> sides) {
    this.vocabulary = vocabulary;
    this.holder = holder;
    this.meaning = meaning;
    this.sides = sides;
    this.qualified = new Qualified(holder, meaning);
    this.truth = new YesOrNo(vocabulary, holder);
  }

  /**
   * Says whether there is a text or a coded finding that is no acuity as it stands; nothing is
   * taken.
   */
  boolean isPossible() {
    boolean coded =
        valueStatement()
            .filter(one -> vocabulary.habits().acuity(one.token()).isEmpty())
            .isPresent();
    return topic().isPresent() && (coded || text().isPresent() || answered().isPresent());
  }

  /** Says whether the text names an eye. */
  boolean namesEye() {
    return text().flatMap(text -> text.value().string()).filter(Shorthand::namesEye).isPresent();
  }

  /** Takes the facts. */
  List<Fact<?>> take() throws Refusal {
    if (meaning.statement().isPresent()) {
      boolean there = isThere();
      List<Fact<?>> facts = read(meaning.statement().get(), there, Topic.ANY);
      holder.ledger().used(IN_CODE);
      return facts;
    }
    Topic topic = topic().orElseThrow(() -> ForeignValues.unfit(holder, "the value of a finding"));
    Optional<CodedStatement> answered = answered();
    if (answered.isPresent()) {
      return read(answered.get(), truth.take(), topic);
    }
    Optional<Coding> coded = valueStatement();
    if (coded.isPresent()) {
      CodedStatement statement = vocabulary.habits().statement(coded.get().token()).orElseThrow();
      List<Fact<?>> facts = read(statement, true, topic);
      coded.get().take(AS_VALUE, Optional.of(statement.display()));
      return facts;
    }
    Place text = text().orElseThrow(() -> ForeignValues.unfit(holder, "a text in shorthand"));
    String words = text.value().string().orElse("");
    List<Fact<?>> facts =
        qualified.all(new Shorthand(topic, text.at(), eye(Optional.empty())).read(words));
    text.takeAll(TEXT);
    return facts;
  }

  /** Returns what a yes or no says of the finding, where the finding is there or is not. */
  private Optional<CodedStatement> answered() {
    return truth.isPresent()
        ? meaning
            .topic()
            .flatMap(vocabulary.habits().words()::answered)
            .flatMap(vocabulary.habits()::statement)
        : Optional.empty();
  }

  private Optional<Topic> topic() {
    return meaning.topic().flatMap(vocabulary.habits()::topic);
  }

  private Optional<Site> eye(Optional<Site> named) throws Refusal {
    List<Meaning.Side> all = new ArrayList<>(sides);
    named.ifPresent(site -> all.add(new Meaning.Side(site, holder.at(), AS_VALUE)));
    return Sides.one(all, holder);
  }

  private List<Fact<?>> read(CodedStatement statement, boolean there, Topic topic) throws Refusal {
    Optional<Site> eye = eye(statement.site());
    Optional<String> note = statement.note(eye, there);
    if (note.isEmpty()) {
      boolean sided = eye.isEmpty() && statement.note(Optional.of(Site.RIGHT), there).isPresent();
      throw sided
          ? Refusal.of(Why.NO_SIDE, holder.at(), "no eye", "right, left or both eyes")
          : Refusal.of(
              Why.VALUE_UNFIT,
              holder.at(),
              (there ? "" : "no ") + statement.display(),
              "what says one thing only");
    }
    // The eye is in the note already, and one that compares both is of both.
    return qualified.all(new Shorthand(topic, holder.at(), Optional.empty()).read(note.get()));
  }

  /** A coded finding without a value is there, unless something may deny it. */
  private boolean isThere() throws Refusal {
    if (holder.has("dataAbsentReason")) {
      throw Refusal.of(
          Why.VALUE_UNFIT, holder.at(), "a finding, and a reason why there is none", "one of them");
    }
    if (!holder.hasValue()) {
      if (holder.has("interpretation")) {
        throw Refusal.of(
            Why.VALUE_UNFIT, holder.at(), "an interpretation without a value", "a value");
      }
      return true;
    }
    if (!truth.isPresent()) {
      throw ForeignValues.unfit(holder, "present or absent");
    }
    return truth.take();
  }

  /** Returns the coding of the value that is a coded finding, where no other may say more. */
  private Optional<Coding> valueStatement() {
    List<Coding> published =
        holder.child("valueCodeableConcept").stream()
            .flatMap(c -> Coding.of(c, this::isStatement, vocabulary).stream())
            .filter(coding -> !Coding.isLocal(coding.place()))
            .toList();
    return published.size() == 1
        ? published.stream().filter(c -> c.sure() && isStatement(c.token())).findFirst()
        : Optional.empty();
  }

  private boolean isStatement(String token) {
    return vocabulary.habits().statement(token).isPresent();
  }

  /** Returns the text; beside a code that others may know it is not read. */
  private Optional<Place> text() {
    Optional<Place> concept = holder.child("valueCodeableConcept");
    boolean published =
        concept.stream().flatMap(c -> c.list("coding").stream()).anyMatch(c -> !Coding.isLocal(c));
    Optional<Place> text = published ? Optional.empty() : concept.flatMap(c -> c.child("text"));
    return text.or(() -> holder.child("valueString"))
        .filter(place -> !place.value().string().orElse("").isBlank());
  }
}
