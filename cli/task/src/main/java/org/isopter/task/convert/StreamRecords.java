package org.isopter.task.convert;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.run.Batch;
import org.isopter.mapper.foreign.run.CarriedLine;
import org.isopter.mapper.foreign.run.Judged;
import org.isopter.model.exam.Exam;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.Records;
import org.isopter.task.output.Output;

/**
 * Puts records into one stream or file. The form may follow from how many there are; then they are
 * held until the end.
 */
public final class StreamRecords implements RecordOutput {

  /** There are more records than the form that was asked for can hold. */
  public static final class TooManyException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooManyException(int count, InputForm form) {
      super(
          "--format %s holds one examination and there are %d: give --output a folder, or take"
                  .formatted(form, count)
              + " --format ndjson");
    }
  }

  private final Optional<Path> target;
  private final Optional<InputForm> wanted;
  private final Output output;
  private final CarriedOutput carried;
  private final Records records = new Records();
  private final List<Exam> held = new ArrayList<>();

  /**
   * Makes an output.
   *
   * @param target the file; empty for standard output
   * @param wanted the form; empty where it follows from the number of records
   */
  public StreamRecords(
      Optional<Path> target, Optional<InputForm> wanted, Output output, CarriedOutput carried) {
    this.target = target;
    this.wanted = wanted;
    this.output = output;
    this.carried = carried;
  }

  @Override
  public void put(Batch batch, Judged judged) {
    judged.exams().forEach(exam -> carried.put(CarriedLine.of(exam)));
    if (!judged.rest().isEmpty()) {
      carried.put(CarriedLine.of(judged.rest()));
    }
    judged.exams().forEach(exam -> put(exam.exam()));
  }

  private void put(Exam exam) {
    if (wanted.equals(Optional.of(InputForm.NDJSON))) {
      write(exam, InputForm.NDJSON);
    } else {
      held.add(exam);
    }
  }

  @Override
  public void commit() {
    if (wanted.isPresent() && wanted.get() != InputForm.NDJSON && held.size() > 1) {
      throw new TooManyException(held.size(), wanted.get());
    }
    held.forEach(exam -> write(exam, form()));
    carried.commit();
    output.commit();
  }

  private void write(Exam exam, InputForm form) {
    output.put(records.write(exam, form));
  }

  private InputForm form() {
    return wanted.orElse(held.size() > 1 ? InputForm.NDJSON : InputForm.YAML);
  }

  @Override
  public String where() {
    String beside = carried.where().map(file -> "; what was left over is in " + file).orElse("");
    return " written as " + form() + target.map(file -> " to " + file).orElse("") + beside;
  }

  @Override
  public void close() {
    try (output) {
      carried.close();
    }
  }
}
