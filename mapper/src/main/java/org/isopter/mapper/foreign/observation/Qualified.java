package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.value.TestDistance;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;

/** Adds to facts that a text tells what the code above it says: the correction, the chart. */
final class Qualified {

  private final Place holder;
  private final Meaning meaning;

  Qualified(Place holder, Meaning meaning) {
    this.holder = holder;
    this.meaning = meaning;
  }

  /** Returns the facts with what the code says of each of them. */
  List<Fact<?>> all(List<Fact<?>> facts) throws Refusal {
    if (meaning.finding().equals(Optional.of(Effect.ACUITY))) {
      holder.ledger().used("acuity-unqualified");
    }
    List<Fact<?>> all = new ArrayList<>();
    for (Fact<?> fact : facts) {
      if (isDistance(fact) && fact.panel().isPresent()) {
        TestDistance.refuseNear(fact.panel().get(), holder);
      }
      all.add(fact.panel().isPresent() ? one(fact, fact.panel().get()) : fact);
    }
    return all;
  }

  private static boolean isDistance(Fact<?> fact) {
    return fact.finding().id().equals("distance-acuity");
  }

  private <V> Fact<V> one(Fact<V> fact, EncodedValue panel) throws Refusal {
    Optional<String> notation = panel.notation().map(Concept::word);
    if (meaning.notation().isPresent() && !meaning.notation().equals(notation)) {
      throw disagree(notation.orElse("none"), "the notation " + meaning.notation().get());
    }
    Map<String, Outcome<Datum>> more = new LinkedHashMap<>();
    for (Map.Entry<String, String> implied : meaning.parts().entrySet()) {
      Outcome<Datum> said = implied(fact.finding(), implied.getKey(), implied.getValue());
      Outcome<Datum> stated = panel.parts().getOrDefault(implied.getKey(), said);
      if (!stated.equals(said)) {
        throw disagree("another " + implied.getKey(), implied.getValue());
      }
      more.put(implied.getKey(), said);
    }
    Result<Fact<V>> whole = Fact.decode(fact.finding(), fact.site(), panel.with(more));
    if (whole instanceof Result.Ok<Fact<V>> ok) {
      return like(fact, ok.value());
    }
    throw disagree(whole.faults().get(0).seen(), whole.faults().get(0).wanted());
  }

  private static <V> Fact<V> like(Fact<V> stated, Fact<V> whole) {
    Fact<V> remarked = whole.remarks(stated.remarks());
    return stated.method().isPresent() ? remarked.by(stated.method().get()) : remarked;
  }

  private Outcome<Datum> implied(Finding<?> finding, String key, String word) throws Refusal {
    return Vocabulary.partNamed(finding, key)
        .filter(part -> part.spec() instanceof Spec.Coded)
        .flatMap(part -> ((Spec.Coded) part.spec()).answers().byWord(word))
        .<Outcome<Datum>>map(concept -> Outcome.found(new Datum.Coded(concept)))
        .orElseThrow(() -> disagree(word, "no " + key + " of " + finding.id()));
  }

  private Refusal disagree(String seen, String wanted) {
    return Refusal.of(Why.CODES_DISAGREE, holder.at(), seen, wanted);
  }
}
