package org.isopter.model.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Outcome;

/** The words for a fact in a message, and its path in a record. */
public final class RecordText {

  private RecordText() {}

  /** Returns eye, finding, value, parts, technique and own time as a record writes them. */
  public static String of(Fact<?> fact) {
    List<String> words = new ArrayList<>();
    words.add(fact.site().word());
    words.add(fact.finding().id());
    fact.outcome().ifAbsent().ifPresent(reason -> words.add("absent: " + reason.word()));
    fact.panel().flatMap(panel -> alone(fact.finding().layout(), panel)).ifPresent(words::add);
    String details = String.join(", ", details(fact));
    return String.join(" ", words) + (details.isEmpty() ? "" : " (" + details + ")");
  }

  /** Returns the path of the entry in a record; entries of one eye are told apart by number. */
  public static String path(Exam exam, Fact<?> fact) {
    List<Fact<?>> entries =
        exam.facts().stream()
            .filter(one -> one.finding() == fact.finding() && one.site() == fact.site())
            .toList();
    String path = "findings." + fact.finding().id() + "." + fact.site().word();
    return entries.size() == 1 ? path : path + "[" + position(entries, fact) + "]";
  }

  private static int position(List<Fact<?>> entries, Fact<?> fact) {
    int position = 0;
    // Equal entries are still two: a repeated reading is a fact of its own.
    while (!isSame(entries.get(position), fact)) {
      position++;
    }
    return position;
  }

  @SuppressWarnings("ReferenceEquality")
  private static boolean isSame(Fact<?> one, Fact<?> other) {
    return one == other;
  }

  private static List<String> details(Fact<?> fact) {
    List<String> details = new ArrayList<>();
    fact.panel().ifPresent(panel -> parts(fact.finding().layout(), panel, details));
    fact.method().ifPresent(method -> details.add("method " + method.word()));
    fact.at().ifPresent(time -> details.add("at " + time));
    return details;
  }

  /** The parts of one alternative stand in its written form already. */
  private static void parts(Layout<?> layout, EncodedValue panel, List<String> into) {
    for (Part<?, ?> part : layout.commonParts()) {
      Optional.ofNullable(panel.parts().get(part.key()))
          .ifPresent(outcome -> into.add(part.key() + " " + words(outcome)));
    }
  }

  private static String words(Outcome<Datum> outcome) {
    return outcome.fold(DatumTexts::of, reason -> "absent: " + reason.word());
  }

  private static Optional<String> alone(Layout<?> layout, EncodedValue panel) {
    return panel.notation().isPresent()
        ? Optional.of(layout.writeChoice(panel))
        : panel.value().map(DatumTexts::of);
  }
}
