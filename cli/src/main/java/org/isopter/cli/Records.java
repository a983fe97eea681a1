package org.isopter.cli;

import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;

/** Reads and writes records in the forms of the command line. */
final class Records {

  private final RecordReader reader = new RecordReader(Catalogue.standard());
  private final RecordWriter writer = new RecordWriter();

  Result<Exam> read(Item item) {
    return reader.read(item.bytes(), format(item.form()));
  }

  Result<Exam> read(String text, RecordFormat format) {
    return reader.read(text, format);
  }

  /** Returns the record, with a line feed at its end. */
  String write(Exam exam, RecordForm form) {
    return form == RecordForm.NDJSON
        ? writer.line(exam) + "\n"
        : writer.write(exam, format(form.form()));
  }

  static RecordFormat format(Form form) {
    return form == Form.YAML ? RecordFormat.YAML : RecordFormat.JSON;
  }
}
