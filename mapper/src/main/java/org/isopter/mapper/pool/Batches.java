package org.isopter.mapper.pool;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.table.Origin;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;

/** Makes batches of what readers return. */
final class Batches {

  static final Batch NOTHING = new Batch(List.of(), List.of(), PoolCounts.NONE);

  private Batches() {}

  static Batch sum(List<Batch> batches) {
    List<PooledExam> exams = new ArrayList<>();
    List<Remainder> left = new ArrayList<>();
    PoolCounts counts = PoolCounts.NONE;
    for (Batch batch : batches) {
      exams.addAll(batch.exams());
      left.addAll(batch.left());
      counts = counts.plus(batch.counts());
    }
    return new Batch(exams, left, counts);
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
    return new Batch(List.of(), List.of(left), PoolCounts.refused(1));
  }

  /**
   * Returns the batch of a reading.
   *
   * @param of finds a document by its number, which places begin with where there are several
   * @param documents how many documents were read
   * @param neighbourhood what was read together
   */
  static Batch of(
      Reading reading, IntFunction<PoolDocument> of, int documents, Neighbourhood neighbourhood) {
    Persons persons = new Persons(reading);
    List<PooledExam> exams = new ArrayList<>();
    for (ReadExam exam : reading.exams()) {
      List<Origin> origins = exam.read().stream().map(fact -> origin(fact, of)).toList();
      // A bundle of ours names persons as its record did.
      Exam apart = exam.rule().isEmpty() ? exam.exam() : neighbourhood.apart(exam.exam());
      exams.add(new PooledExam(apart, persons.of(exam.exam().header()), origins));
    }
    List<Remainder> left = new ArrayList<>();
    reading.resources().forEach(read -> left(read, of).ifPresent(left::add));
    long kept = reading.count("kept");
    long facts = exams.stream().mapToLong(exam -> exam.exam().facts().size()).sum();
    int resources = reading.resources().size();
    PoolCounts counts =
        new PoolCounts(documents, 0, resources, resources - kept, kept, exams.size(), facts);
    return new Batch(exams, left, counts);
  }

  private static Origin origin(ReadExam.ReadFact fact, IntFunction<PoolDocument> of) {
    PoolDocument document = of.apply(number(fact.at()));
    return Origin.of(document.source(), document.line(), fact.rules());
  }

  private static Optional<Remainder> left(ReadResource read, IntFunction<PoolDocument> of) {
    PoolDocument document = of.apply(number(read.at()));
    if (read.outcome() instanceof ResourceOutcome.Kept kept) {
      return Optional.of(left(document, read, Remainder.What.KEPT, kept.reasons()));
    }
    if (read.outcome() instanceof ResourceOutcome.Translated translated
        && !translated.leftover().isEmpty()) {
      return Optional.of(left(document, read, Remainder.What.PART, translated.reasons()));
    }
    return Optional.empty();
  }

  private static Remainder left(
      PoolDocument document, ReadResource read, Remainder.What what, List<Reason> reasons) {
    LinkedHashSet<String> words = new LinkedHashSet<>();
    reasons.forEach(reason -> words.add(reason.why().word()));
    return new Remainder(
        document.source(),
        document.line(),
        what,
        read.resource().string("resourceType").orElse(""),
        read.at(),
        List.copyOf(words),
        reasons.stream().map(Reason::fault).toList(),
        what == Remainder.What.KEPT ? Optional.of(read.resource()) : Optional.empty(),
        read.outcome() instanceof ResourceOutcome.Translated part ? part.leftover() : List.of());
  }

  /** Returns the number that a place begins with; 0 where it begins with a name. */
  private static int number(String at) {
    int end = at.indexOf('/', 1);
    String first = at.substring(Math.min(1, at.length()), end < 0 ? at.length() : end);
    return first.chars().allMatch(Character::isDigit) && !first.isEmpty()
        ? Integer.parseInt(first)
        : 0;
  }
}
