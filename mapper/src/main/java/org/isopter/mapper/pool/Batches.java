package org.isopter.mapper.pool;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.table.FactOrigin;
import org.isopter.mapper.table.Person;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;

/** Makes batches of what readers return. */
final class Batches {

  static final PoolBatch NOTHING = new PoolBatch(List.of(), List.of(), List.of(), PoolCounts.NONE);

  /** Why an examination with errors by the consistency rules is left over. */
  static final String ERRORS = "record-errors";

  private Batches() {}

  static PoolBatch sum(List<PoolBatch> batches) {
    List<PooledExam> exams = new ArrayList<>();
    List<Remainder> left = new ArrayList<>();
    List<Flawed> flawed = new ArrayList<>();
    PoolCounts counts = PoolCounts.NONE;
    for (PoolBatch batch : batches) {
      exams.addAll(batch.exams());
      left.addAll(batch.left());
      flawed.addAll(batch.flawed());
      counts = counts.plus(batch.counts());
    }
    return new PoolBatch(exams, left, flawed, counts);
  }

  static PoolBatch refused(PoolDocument document, List<Fault> faults) {
    return refused(document, "", "refused", faults);
  }

  /** Refuses what a pool has written. */
  static PoolBatch pooled(PoolDocument document) {
    Fault fault =
        new Fault("/meta/security", PoolLabel.CODE, "no such label", "pool what it was made from");
    return refused(document, "Bundle", "from-a-pool", List.of(fault));
  }

  /** Refuses what never came as a document. */
  static PoolBatch lost(String source, long line, String reason) {
    return refused(source, line, "", reason, List.of());
  }

  /** Refuses a resource that stands on a line by itself, where nothing is read with it. */
  static PoolBatch notInABundle(PoolDocument document, Raw resource) {
    String type = resource.string("resourceType").orElse("");
    Fault fault =
        new Fault(
            "/resourceType",
            type,
            "\"Bundle\"",
            "put the resources of a person into one bundle, or pool all of them at once on one machine");
    return refused(document, type, "not-in-a-bundle", List.of(fault));
  }

  private static PoolBatch refused(
      PoolDocument document, String type, String reason, List<Fault> faults) {
    return refused(document.source(), document.line(), type, reason, faults);
  }

  private static PoolBatch refused(
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
    return new PoolBatch(List.of(), List.of(left), List.of(), PoolCounts.refused(1));
  }

  /** Returns the batch of a record, or of a bundle of ours that is as it was written. */
  static PoolBatch ours(PoolDocument document, Exam exam, OnErrors policy) {
    List<Violation> errors = policy.of(exam);
    List<Flawed> flawed =
        errors.isEmpty()
            ? List.of()
            : List.of(new Flawed(document.source(), document.line(), errors));
    if (!errors.isEmpty() && policy == OnErrors.LEFT_OVER) {
      PoolBatch refused = refused(document, "", ERRORS, faults(errors));
      return new PoolBatch(List.of(), refused.left(), flawed, refused.counts());
    }
    FactOrigin origin = FactOrigin.of(document.source(), document.line());
    List<FactOrigin> origins = Collections.nCopies(exam.facts().size(), origin);
    Person person = Person.stated(exam.header().demographics());
    PoolCounts counts = new PoolCounts(1, 0, 1, 1, 0, 1, exam.facts().size());
    return new PoolBatch(List.of(new PooledExam(exam, person, origins)), List.of(), flawed, counts);
  }

  static List<Fault> faults(List<Violation> errors) {
    return errors.stream()
        .map(error -> new Fault(error.path(), error.seen(), error.wanted(), error.suggestion()))
        .toList();
  }
}
