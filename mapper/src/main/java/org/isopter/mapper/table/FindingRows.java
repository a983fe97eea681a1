package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Makes the rows of the long table. */
public final class FindingRows {

  private static final EncodedValue NOTHING =
      new EncodedValue(Optional.empty(), Optional.empty(), Map.of());

  /** What a row of a fact is about: the value itself, or a part that has a code of its own. */
  private record Named(String key, Optional<Code> code) {
    static final Named VALUE = new Named(Part.VALUE, Optional.empty());

    static Named of(Part<?, ?> part) {
      return new Named(part.key(), Optional.of(part.code()));
    }
  }

  /** A fact with what all its rows share. */
  private record Rowed(
      Fact<?> fact, FactKey key, FactOrigin origin, Code code, List<String> conditions) {

    static Rowed of(ExamView.Named entry, FactOrigin origin) {
      Fact<?> fact = entry.fact();
      EncodedValue panel = fact.panel().orElse(NOTHING);
      Code code = fact.finding().codes().at(fact.site(), panel, fact.method()).get(0);
      return new Rowed(fact, entry.key(), origin, code, toldApart(fact.finding(), panel));
    }
  }

  private final PooledExam pooled;
  private final ExamView exam;
  private final List<Derived> derived;
  private final LogMars logMars;
  private final Map<FactKey, FactOrigin> origins = new HashMap<>();
  private final List<FindingRow> rows = new ArrayList<>();

  private FindingRows(PooledExam pooled, ExamView exam, List<Derived> derived) {
    this.pooled = pooled;
    this.exam = exam;
    this.derived = derived;
    this.logMars = new LogMars(derived);
  }

  /** Returns the rows of an examination: each fact, part by part, then each derived statement. */
  public static List<FindingRow> of(PooledExam pooled) {
    ExamView view = pooled.exam().view();
    return of(pooled, view, Derivations.of(view));
  }

  /** Returns the rows of an examination, by its view, with the statements derived from it. */
  public static List<FindingRow> of(PooledExam pooled, ExamView exam, List<Derived> derived) {
    FindingRows all = new FindingRows(pooled, exam, derived);
    all.facts();
    all.statements();
    return all.rows;
  }

  private void facts() {
    Iterator<FactOrigin> next = pooled.origins().iterator();
    exam.entries().forEach(entry -> fact(entry, next.next()));
  }

  private void fact(ExamView.Named entry, FactOrigin origin) {
    origins.put(entry.key(), origin);
    Rowed rowed = Rowed.of(entry, origin);
    fact(rowed);
    vector(rowed);
  }

  private void fact(Rowed rowed) {
    Fact<?> fact = rowed.fact();
    Optional<EncodedValue> panel = fact.panel();
    if (panel.isEmpty()) {
      fact.outcome()
          .ifAbsent()
          .ifPresent(why -> add(rowed, Optional.empty(), FindingRow.Value.absent(why)));
      return;
    }
    Variant variant = fact.finding().layout().variant(panel.get().notation()).orElseThrow();
    panel
        .get()
        .value()
        .map(datum -> value(fact, rowed.key(), panel.get(), variant, datum))
        .ifPresent(value -> add(rowed, Optional.of(Named.VALUE), value));
    for (Part<?, ?> part : variant.parts()) {
      Outcome<Datum> outcome = panel.get().parts().get(part.key());
      if (outcome != null) {
        FindingRow.Value value =
            outcome.fold(
                datum -> plain(part.spec(), datum, DatumTexts.of(datum)), FindingRow.Value::absent);
        add(rowed, Optional.of(Named.of(part)), value);
      }
    }
  }

  private void vector(Rowed rowed) {
    PowerVectors.of(rowed.fact())
        .ifPresent(
            vector -> {
              component(rowed, "m", vector.m());
              component(rowed, "j0", vector.j0());
              component(rowed, "j45", vector.j45());
            });
  }

  private void component(Rowed rowed, String part, double power) {
    Fact<?> fact = rowed.fact();
    Quantity rounded = new Quantity(Numbers.round(power, 3), Unit.DIOPTRE);
    rows.add(
        new FindingRow(
            pooled.exam(),
            rowed.key().text() + ".power-vector",
            "power-vector",
            Optional.of(part),
            ExamCodes.DERIVED,
            Optional.empty(),
            fact.site(),
            fact.at().orElse(pooled.exam().header().performed()),
            FindingRow.Value.of(rounded.toString(), Optional.of(rounded)),
            fact.method(),
            rowed.conditions(),
            false,
            FactOrigin.of(rowed.origin().source(), rowed.origin().line()),
            Optional.empty(),
            List.of()));
  }

  private FindingRow.Value value(
      Fact<?> fact, FactKey key, EncodedValue panel, Variant variant, Datum datum) {
    if (panel.notation().isEmpty()) {
      FindingRow.Value plain = plain(variant.value().orElseThrow(), datum, DatumTexts.of(datum));
      return AcuityNumber.of(fact, Optional.empty()).map(plain::limit).orElse(plain);
    }
    return new FindingRow.Value(
        Optional.of(fact.finding().layout().writeChoice(panel)),
        panel.notation(),
        logMars.of(key),
        AcuityNumber.of(fact, logMars.of(key)),
        coded(datum),
        Optional.empty());
  }

  private static FindingRow.Value plain(Spec spec, Datum datum, String text) {
    Optional<Quantity> number = Usual.of(spec, datum);
    return new FindingRow.Value(
        Optional.of(text),
        Optional.empty(),
        number,
        Optional.empty(),
        coded(datum),
        Optional.empty());
  }

  private static Optional<Concept> coded(Datum datum) {
    return datum instanceof Datum.Coded one ? Optional.of(one.concept()) : Optional.empty();
  }

  private void add(Rowed rowed, Optional<Named> part, FindingRow.Value value) {
    Exam exam = pooled.exam();
    Fact<?> fact = rowed.fact();
    rows.add(
        new FindingRow(
            exam,
            rowed.key().text(),
            fact.finding().id(),
            part.map(Named::key),
            rowed.code(),
            part.flatMap(Named::code),
            fact.site(),
            fact.at().orElse(exam.header().performed()),
            value,
            fact.method(),
            rowed.conditions(),
            true,
            rowed.origin(),
            fact.device(),
            fact.remarks()));
  }

  private void statements() {
    List<String> names = Derived.names(derived);
    for (int i = 0; i < names.size(); i++) {
      statement(derived.get(i), names.get(i));
    }
  }

  private void statement(Derived one, String name) {
    Exam exam = pooled.exam();
    FactOrigin origin = Optional.ofNullable(origins.get(one.from().get(0))).orElseThrow();
    rows.add(
        new FindingRow(
            exam,
            name,
            one.statement().id(),
            Optional.of(Part.VALUE),
            ExamCodes.DERIVED,
            Optional.empty(),
            one.site(),
            exam.header().performed(),
            FindingRow.Value.of(one.statement().text(), one.value()),
            Optional.empty(),
            List.of(),
            false,
            FactOrigin.of(origin.source(), origin.line()),
            Optional.empty(),
            List.of()));
  }

  private static List<String> toldApart(Finding<?> finding, EncodedValue panel) {
    return finding.distinguishing().stream()
        .flatMap(
            part ->
                panel.found(part).stream().map(datum -> new ColumnGroup.Mark(part, datum).word()))
        .toList();
  }
}
