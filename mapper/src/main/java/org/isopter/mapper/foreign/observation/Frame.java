package org.isopter.mapper.foreign.observation;

import java.util.List;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.model.exam.Fact;

/** What every observation of ours says, and what others may say as well. */
final class Frame {

  private static final String SYSTEM = "http://terminology.hl7.org/CodeSystem/observation-category";

  private Frame() {}

  /** Takes what our own writer says again of every observation. */
  static void take(Place observation, List<Fact<?>> facts) {
    observation.take(Ledger.CATALOGUE, "resourceType");
    category(observation);
    if (facts.size() == 1 && observation.child("code").isPresent()) {
      Place code = observation.child("code").get();
      if (code.text("text").equals(facts.get(0).finding().title())) {
        code.take(Ledger.CATALOGUE, "text");
      }
    }
  }

  /** Takes the category where it is that of an examination. */
  private static void category(Place observation) {
    for (Place category : observation.list("category")) {
      List<Place> codings = category.list("coding");
      if (codings.size() == 1
          && codings.get(0).text("system").equals(SYSTEM)
          && codings.get(0).text("code").equals("exam")) {
        codings.get(0).take(Ledger.CATALOGUE, "system", "code");
        if (codings.get(0).text("display").equals("Exam")) {
          codings.get(0).take(Ledger.CATALOGUE, "display");
        }
        return;
      }
    }
  }
}
