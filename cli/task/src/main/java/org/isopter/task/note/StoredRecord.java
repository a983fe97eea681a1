package org.isopter.task.note;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.isopter.mapper.io.FailureText;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** The record that is amended or added to, in its file. */
final class StoredRecord {

  private StoredRecord() {}

  /** Returns the form that the name of the file tells. */
  static RecordFormat format(Path file) {
    return file.toString().endsWith(".json") ? RecordFormat.JSON : RecordFormat.YAML;
  }

  /** Returns the record; what is wrong with it names the file. */
  static Result<Exam> read(Path file) {
    Result<Exam> read = parsed(file);
    return read instanceof Result.Ok<Exam>
        ? read
        : Result.refused(read.faults().stream().map(fault -> in(file, fault)).toList());
  }

  private static Result<Exam> parsed(Path file) {
    try {
      return new RecordReader(Catalogue.standard()).read(Files.readAllBytes(file), format(file));
    } catch (IOException unreadable) {
      return Result.refused(List.of(Fault.of("", FailureText.of(unreadable), "a record")));
    }
  }

  private static Fault in(Path file, Fault fault) {
    String where = fault.path().isEmpty() ? file.toString() : file + ": " + fault.path();
    return fault.at(where);
  }
}
