package org.isopter.task.check;

import java.util.List;
import org.isopter.mapper.record.RecordPlaces;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.mapper.record.schema.RecordSchema;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.Records;
import org.isopter.task.report.Issue;

/**
 * Checks records with the reader, and what the reader takes with the published schema: the two must
 * agree, so that nobody who uses the schema alone is surprised. What passes both is held against
 * the consistency rules.
 */
public final class RecordCheck {

  private final Records records = new Records();
  private final RecordSchema schema = new RecordSchema(Catalogue.standard());
  private final RecordWriter writer = new RecordWriter();
  private final Suppressions suppressions;

  public RecordCheck(Suppressions suppressions) {
    this.suppressions = suppressions;
  }

  /** Returns all there is to tell of a record, in the order of its text, or the worst first. */
  public List<Issue> issues(InputDocument item) {
    Result<Exam> exam = records.read(item);
    List<Fault> faults =
        exam instanceof Result.Ok<Exam> ok ? schema.check(writer.tree(ok.value())) : exam.faults();
    return exam instanceof Result.Ok<Exam> ok && faults.isEmpty()
        ? violations(item, ok.value())
        : faults.stream().map(fault -> Issue.of(item.position(), fault)).toList();
  }

  private List<Issue> violations(InputDocument item, Exam exam) {
    List<Violation> shown =
        Consistency.check(exam).stream()
            .filter(violation -> !suppressions.cover(item, violation))
            .toList();
    if (shown.isEmpty()) {
      return List.of();
    }
    RecordPlaces places = RecordPlaces.of(item.bytes(), Records.format(item.form()));
    return shown.stream().map(violation -> issue(item, places, violation)).toList();
  }

  private static Issue issue(InputDocument item, RecordPlaces places, Violation violation) {
    Fault fault =
        new Fault(
            places.locate(violation.path()),
            violation.seen(),
            violation.wanted(),
            violation.suggestion());
    return Issue.of(item.position(), fault).by(violation.rule());
  }
}
