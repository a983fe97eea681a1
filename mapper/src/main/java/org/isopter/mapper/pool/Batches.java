package org.isopter.mapper.pool;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.table.Origin;
import org.isopter.mapper.table.Person;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;

/** Makes batches of what readers return. */
final class Batches {

  static final Batch NOTHING = new Batch(List.of(), List.of(), List.of(), PoolCounts.NONE);

  /** Why an examination with errors by the consistency rules is left over. */
  static final String ERRORS = "record-errors";

  private Batches() {}

  static Batch sum(List<Batch> batches) {
    List<PooledExam> exams = new ArrayList<>();
    List<Remainder> left = new ArrayList<>();
    List<Flawed> flawed = new ArrayList<>();
    PoolCounts counts = PoolCounts.NONE;
    for (Batch batch : batches) {
      exams.addAll(batch.exams());
      left.addAll(batch.left());
      flawed.addAll(batch.flawed());
      counts = counts.plus(batch.counts());
    }
    return new Batch(exams, left, flawed, counts);
  }

  static Batch refused(PoolDocument document, List<Fault> faults) {
    return refused(document, "", "refused", faults);
  }

  /** Refuses what a pool has written. */
  static Batch pooled(PoolDocument document) {
    Fault fault =
        new Fault("/meta/security", PoolLabel.CODE, "no such label", "pool what it was made from");
    return refused(document, "Bundle", "from-a-pool", List.of(fault));
  }

  /** Refuses what never came as a document. */
  static Batch lost(String source, long line, String reason) {
    return refused(source, line, "", reason, List.of());
  }

  /** Refuses a resource that stands on a line by itself, where nothing is read with it. */
  static Batch notInABundle(PoolDocument document, Raw resource) {
    String type = resource.string("resourceType").orElse("");
    Fault fault =
        new Fault(
            "/resourceType",
            type,
            "\"Bundle\"",
            "put the resources of a person into one bundle, or pool all of them at once on one machine");
    return refused(document, type, "not-in-a-bundle", List.of(fault));
  }

  private static Batch refused(
      PoolDocument document, String type, String reason, List<Fault> faults) {
    return refused(document.source(), document.line(), type, reason, faults);
  }

  private static Batch refused(
      String source, long line, String type, String reason, List<Fault> faults) {
    Remainder left =
        new Remainder(
            source,
            line,
            Remainder.What.REFUSED,
            type,
            "",
            List.of(reason),
            faults,
            Optional.empty(),
            List.of());
    return new Batch(List.of(), List.of(left), List.of(), PoolCounts.refused(1));
  }

  /** Returns the batch of a record, or of a bundle of ours that is as it was written. */
  static Batch ours(PoolDocument document, Exam exam, OnErrors policy) {
    List<Violation> errors = policy.of(exam);
    List<Flawed> flawed =
        errors.isEmpty()
            ? List.of()
            : List.of(new Flawed(document.source(), document.line(), errors));
    if (!errors.isEmpty() && policy == OnErrors.LEFT_OVER) {
      Batch refused = refused(document, "", ERRORS, faults(errors));
      return new Batch(List.of(), refused.left(), flawed, refused.counts());
    }
    Origin origin = Origin.of(document.source(), document.line());
    List<Origin> origins = Collections.nCopies(exam.facts().size(), origin);
    Person person = Person.stated(exam.header().demographics());
    PoolCounts counts = new PoolCounts(1, 0, 1, 1, 0, 1, exam.facts().size());
    return new Batch(List.of(new PooledExam(exam, person, origins)), List.of(), flawed, counts);
  }

  static List<Fault> faults(List<Violation> errors) {
    return errors.stream()
        .map(error -> new Fault(error.path(), error.seen(), error.wanted(), error.suggestion()))
        .toList();
  }
}
