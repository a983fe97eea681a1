package org.isopter.task.generate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Identifier;
import org.isopter.model.simulate.Cohort;
import org.isopter.task.io.Messages;
import org.isopter.task.io.Utf8;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Writes examinations of invented persons, one a line. */
public final class GenerateTask {

  private final RunLog log;
  private final int persons;
  private final long seed;
  private final GenerateForm form;

  /**
   * Makes a task.
   *
   * @param persons how many persons, each with 1 to 5 visits
   * @param seed the same seed gives the same lines
   * @throws UsageException when there is to be nobody
   */
  public GenerateTask(RunLog log, int persons, long seed, GenerateForm form) {
    if (persons < 1) {
      throw new UsageException("--persons " + persons + ": wanted 1 or more");
    }
    this.log = log;
    this.persons = persons;
    this.seed = seed;
    this.form = form;
  }

  /**
   * Writes the lines.
   *
   * @param file where to; empty for the data of the log
   * @throws UnwritableException when they cannot be written
   */
  public void run(Optional<Path> file) {
    ParallelCohort cohort = new ParallelCohort(new Cohort(persons, seed), line());
    int exams = file.isPresent() ? toFile(cohort, file.get()) : toData(cohort);
    log.say(
        "%s of %s, all invented (seed %s): not to be taken as epidemiology"
            .formatted(
                Messages.count(exams, "examination"), Messages.count(persons, "person"), seed));
  }

  /**
   * Writes the group of each person, as a file of persons that a pool takes: a line of {@code
   * id,system,group} for each.
   *
   * @throws UnwritableException when it cannot be written
   */
  public void groups(Path target) {
    Cohort cohort = new Cohort(persons, seed);
    try (AtomicFile file = AtomicFile.at(target)) {
      Utf8.write(file, target.toString(), "id,system,group\n");
      for (int person = 0; person < persons; person++) {
        Identifier subject = cohort.subject(person);
        String group = cohort.group(person).word();
        Utf8.write(
            file,
            target.toString(),
            String.join(",", subject.value(), subject.system().orElse(""), group) + "\n");
      }
      file.commit();
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }

  private Function<Exam, String> line() {
    return switch (form) {
      case NDJSON -> new RecordWriter()::line;
      case FHIR_NDJSON -> FhirWriter.of(BundleKind.COLLECTION)::write;
    };
  }

  private int toData(ParallelCohort cohort) {
    return cohort.each(
        lines -> {
          Utf8.write(log.data(), "standard output", lines);
          // A reader that has gone shows only when the bytes leave, and the run could be long.
          log.data().flush();
        });
  }

  private static int toFile(ParallelCohort cohort, Path target) {
    try (AtomicFile file = AtomicFile.at(target)) {
      int exams = cohort.each(lines -> Utf8.write(file, target.toString(), lines));
      file.commit();
      return exams;
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }
}
