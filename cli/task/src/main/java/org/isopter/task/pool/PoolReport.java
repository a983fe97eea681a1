package org.isopter.task.pool;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.pool.PoolCounts;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.privacy.Suppression;
import org.isopter.task.io.Messages;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;

/** Says what came of a pool. */
public final class PoolReport {

  private final RunLog log;

  public PoolReport(RunLog log) {
    this.log = log;
  }

  /** Writes what became of the documents to the log. */
  public void tell(PoolResult result) {
    PoolCounts counts = result.counts();
    PoolResult.Tables tables = result.tables();
    log.say(
        "%s read, %d of them refused"
            .formatted(Messages.count(counts.documents(), "document"), counts.refused()));
    log.say(
        "%s in them: %d pooled, %d left over"
            .formatted(
                Messages.count(counts.resources(), "resource"), counts.pooled(), counts.kept()));
    String examinations =
        "%s with %s"
            .formatted(
                Messages.count(counts.examinations(), "examination"),
                Messages.count(counts.facts(), "fact"));
    Suppression.Taken taken = result.risk().taken();
    if (taken.persons() > 0) {
      log.say(examinations);
      log.say(
          "%s with %s taken out, since too few others share their traits or their visits fill the period"
              .formatted(
                  Messages.count(taken.persons(), "person"),
                  Messages.count(taken.examinations(), "examination")));
      examinations =
          "left are %s with %s"
              .formatted(
                  Messages.count(tables.persons(), "person"),
                  Messages.count(tables.examinations(), "examination"));
    }
    log.say(
        "%s: %s of findings, %s of eyes"
            .formatted(
                examinations,
                Messages.count(tables.findings(), "row"),
                Messages.count(tables.eyes(), "row")));
    if (taken.band() > 1) {
      log.say("ages are in bands of %d years".formatted(taken.band()));
    }
    if (result.aside().skipped() > 0) {
      log.say(
          "%s there already, and not read again"
              .formatted(Messages.count(result.aside().skipped(), "document")));
    }
    if (result.aside().repeated() > 0) {
      String more =
          result.aside().repeated() == 1
              ? "1 examination was read more than once, and each of its rows is there as often"
              : result.aside().repeated()
                  + " examinations were read more than once, and each of their rows is there as often";
      log.say(more);
    }
    if (counts.refused() > 0) {
      log.raise(ExitStatus.REFUSED);
    }
  }

  /** Says what there is in the folder besides the tables, and what to look at in it. */
  public void tell(PoolResult result, Optional<PersonsFile> persons, Path folder) {
    tell(result);
    persons.ifPresent(
        file ->
            log.say(
                "%s in the file of persons: %d with an examination here"
                    .formatted(Messages.count(file.size(), "person"), file.found())));
    if (result.aside().ageless() > 0) {
      log.say(
          "%s in no OMOP table, since no age is known: see omop/left_out, and name birth years with --persons"
              .formatted(Messages.count(result.aside().ageless(), "person")));
    }
    PoolResult.Risk risk = result.risk();
    if (risk.least() > 0) {
      log.say(
          "the smallest group of persons who share all their traits has %s: see risk.csv"
              .formatted(Messages.count(risk.least(), "person")));
    }
    if (risk.filling() > 0) {
      log.say(
          "%s with visits over almost the whole period: who knows its first and last day knows theirs"
              .formatted(Messages.count(risk.filling(), "person")));
    }
    if (risk.smallCells() > 0) {
      log.say(
          "%s of persons with traits that too few share: see small-cells.csv"
              .formatted(Messages.count(risk.smallCells(), "group")));
    }
    if (result.counts().refused() + result.counts().kept() > 0) {
      log.say("what was left over, and why, is in leftover.ndjson");
    }
    log.say("tables written to " + folder);
  }
}
