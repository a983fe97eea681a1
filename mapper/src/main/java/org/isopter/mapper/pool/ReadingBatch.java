package org.isopter.mapper.pool;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.person.Persons;
import org.isopter.mapper.table.FactOrigin;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;

/** Makes a batch of FHIR that was read. */
final class ReadingBatch {

  private final IntFunction<PoolDocument> documents;
  private final OnErrors policy;
  private final List<PooledExam> exams = new ArrayList<>();
  private final List<Flawed> flawed = new ArrayList<>();

  /** The errors of examinations that are left over, by the places of their resources. */
  private final Map<String, List<Fault>> refused = new HashMap<>();

  /**
   * Begins one.
   *
   * @param documents finds a document by its number, which places begin with where there are
   *     several
   */
  private ReadingBatch(IntFunction<PoolDocument> documents, OnErrors policy) {
    this.documents = documents;
    this.policy = policy;
  }

  /**
   * Returns the batch of a reading. Of an examination with errors that may not be pooled, every
   * resource is kept that no other examination was read from.
   *
   * @param of finds a document by its number, which places begin with where there are several
   * @param documents how many documents were read
   * @param neighbourhood what was read together
   */
  static PoolBatch of(
      Reading reading,
      IntFunction<PoolDocument> of,
      int documents,
      Neighbourhood neighbourhood,
      OnErrors policy) {
    ReadingBatch batch = new ReadingBatch(of, policy);
    batch.addAll(reading, neighbourhood);
    List<Remainder> left = new ArrayList<>();
    reading.resources().forEach(read -> batch.left(read).ifPresent(left::add));
    long kept = left.stream().filter(one -> one.what() == Remainder.What.KEPT).count();
    long facts = batch.exams.stream().mapToLong(exam -> exam.exam().facts().size()).sum();
    int resources = reading.resources().size();
    PoolCounts counts =
        new PoolCounts(documents, 0, resources, resources - kept, kept, batch.exams.size(), facts);
    return new PoolBatch(batch.exams, left, batch.flawed, counts);
  }

  private void addAll(Reading reading, Neighbourhood neighbourhood) {
    Persons persons = new Persons(reading);
    List<String> pooled = new ArrayList<>();
    for (ReadExam exam : reading.exams()) {
      List<Violation> errors = policy.of(exam.exam());
      if (!errors.isEmpty()) {
        PoolDocument document = documents.apply(number(exam.from().get(0)));
        flawed.add(new Flawed(document.source(), document.line(), errors));
      }
      if (!errors.isEmpty() && policy == OnErrors.LEFT_OVER) {
        exam.from().forEach(at -> refused.put(at, Batches.faults(errors)));
      } else {
        pooled.addAll(exam.from());
        List<FactOrigin> origins = exam.read().stream().map(this::origin).toList();
        // A bundle of ours names persons as its record did.
        Exam apart = exam.rule().isEmpty() ? exam.exam() : neighbourhood.apart(exam.exam());
        exams.add(new PooledExam(apart, persons.of(exam.exam().header()), origins));
      }
    }
    pooled.forEach(refused::remove);
  }

  private FactOrigin origin(ReadExam.ReadFact fact) {
    PoolDocument document = documents.apply(number(fact.at()));
    return FactOrigin.of(document.source(), document.line(), fact.rules());
  }

  private Optional<Remainder> left(ReadResource read) {
    PoolDocument document = documents.apply(number(read.at()));
    if (read.outcome() instanceof ResourceOutcome.Kept kept) {
      return Optional.of(left(document, read, Remainder.What.KEPT, kept.reasons()));
    }
    Optional<List<Fault>> faults = Optional.ofNullable(refused.get(read.at()));
    if (faults.isPresent()) {
      return Optional.of(withErrors(document, read, faults.get()));
    }
    if (read.outcome() instanceof ResourceOutcome.Translated translated
        && !translated.leftover().isEmpty()) {
      return Optional.of(left(document, read, Remainder.What.PART, translated.reasons()));
    }
    return Optional.empty();
  }

  private static Remainder withErrors(
      PoolDocument document, ReadResource read, List<Fault> faults) {
    return new Remainder(
        document.source(),
        document.line(),
        Remainder.What.KEPT,
        read.resource().string("resourceType").orElse(""),
        read.at(),
        List.of(Batches.ERRORS),
        faults,
        Optional.of(read.resource()),
        List.of());
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
