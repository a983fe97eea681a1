package org.isopter.task.input;

import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;

/** Reads and writes records in the forms of the command line. */
public final class Records {

  private final RecordReader reader = new RecordReader(Catalogue.standard());
  private final RecordWriter writer = new RecordWriter();

  /** Reads a record, or returns its faults. */
  public Result<Exam> read(InputDocument item) {
    return reader.read(item.bytes(), format(item.form()));
  }

  /** Reads a record, or returns its faults. */
  public Result<Exam> read(String text, RecordFormat format) {
    return reader.read(text, format);
  }

  /** Returns the record, with a line feed at its end. */
  public String write(Exam exam, InputForm form) {
    return form == InputForm.NDJSON ? writer.line(exam) + "\n" : writer.write(exam, format(form));
  }

  /** Returns the format of a record that is written in a form. */
  public static RecordFormat format(InputForm form) {
    return form == InputForm.YAML ? RecordFormat.YAML : RecordFormat.JSON;
  }
}
