package org.isopter.task.roundtrip;

import java.util.ArrayList;
import java.util.List;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.convert.Bundles;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.Records;

/** Writes an examination in each form, reads it again, and compares what came back. */
public final class RoundTrip {

  /**
   * What came of one form.
   *
   * @param form the form
   * @param back what was read again, compared with what was written
   */
  record Leg(String form, Result<List<Difference>> back) {

    boolean isIdentical() {
      return back.isOk() && back.orThrow().isEmpty();
    }
  }

  private final Records records = new Records();
  private final Bundles bundles;
  private final RecordWriter writer = new RecordWriter();

  public RoundTrip(BundleKind kind) {
    this.bundles = new Bundles(kind);
  }

  List<Leg> legs(InputDocument item, Exam exam) {
    List<Leg> legs = new ArrayList<>();
    String json = bundles.write(exam, item.bytes(), InputForm.JSON);
    legs.add(leg("fhir-json", exam, bundles.read(json, InputForm.JSON)));
    String xml = bundles.write(exam, item.bytes(), InputForm.XML);
    legs.add(leg("fhir-xml", exam, bundles.read(xml, InputForm.XML)));
    String record = records.write(exam, InputForm.JSON);
    legs.add(leg("record-json", exam, records.read(record, RecordFormat.JSON)));
    String yaml = records.write(exam, InputForm.YAML);
    legs.add(leg("record-yaml", exam, records.read(yaml, RecordFormat.YAML)));
    return legs;
  }

  private Leg leg(String form, Exam before, Result<Exam> after) {
    return new Leg(form, after.map(exam -> compare(before, exam)));
  }

  private List<Difference> compare(Exam before, Exam after) {
    if (before.equals(after)) {
      return List.of();
    }
    List<Difference> found = Difference.between(writer.tree(before), writer.tree(after));
    // Two examinations that are written alike and yet differ would be a fault of the writer.
    return found.isEmpty()
        ? List.of(new Difference("", "an examination", "another that is written alike"))
        : found;
  }
}
