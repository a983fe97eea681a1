package org.isopter.cli;

import java.util.List;
import org.isopter.mapper.record.RecordSchema;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Checks records with the reader, and what the reader takes with the published schema: the two must
 * agree, so that nobody who uses the schema alone is surprised.
 */
final class RecordCheck {

  private final Records records = new Records();
  private final RecordSchema schema = new RecordSchema(Catalogue.standard());
  private final RecordWriter writer = new RecordWriter();

  /** Returns every fault of a record, in the order of its text. */
  List<Fault> faults(Item item) {
    Result<Exam> exam = records.read(item);
    return exam instanceof Result.Ok<Exam> ok
        ? schema.check(writer.tree(ok.value()))
        : exam.faults();
  }
}
