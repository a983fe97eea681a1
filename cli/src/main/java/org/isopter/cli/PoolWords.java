package org.isopter.cli;

import java.nio.file.Path;
import org.isopter.mapper.pool.PoolCounts;
import org.isopter.mapper.pool.PoolResult;

/** Says what came of a pool. */
final class PoolWords {

  private final Journal journal;

  PoolWords(Journal journal) {
    this.journal = journal;
  }

  void tell(PoolResult result) {
    PoolCounts counts = result.counts();
    journal.say(
        "%s read, %d of them refused"
            .formatted(Words.count(counts.documents(), "document"), counts.refused()));
    journal.say(
        "%s in them: %d pooled, %d left over"
            .formatted(
                Words.count(counts.resources(), "resource"), counts.pooled(), counts.kept()));
    journal.say(
        "%s with %s: %s of findings, %s of eyes"
            .formatted(
                Words.count(counts.examinations(), "examination"),
                Words.count(counts.facts(), "fact"),
                Words.count(result.findings(), "row"),
                Words.count(result.eyes(), "row")));
    if (result.repeated() > 0) {
      String more =
          result.repeated() == 1
              ? "1 examination was read more than once, and each of its rows is there as often"
              : result.repeated()
                  + " examinations were read more than once, and each of their rows is there as often";
      journal.say(more);
    }
    if (counts.refused() > 0) {
      journal.raise(ExitStatus.REFUSED);
    }
  }

  /** Says what there is in the folder besides the tables, and what to look at in it. */
  void tell(PoolResult result, Path folder) {
    tell(result);
    PoolResult.Risk risk = result.risk();
    if (risk.suppressed() > 0) {
      journal.say(
          "%s taken out, since too few others share their traits"
              .formatted(Words.count(risk.suppressed(), "person")));
    }
    if (risk.least() > 0) {
      journal.say(
          "%s at least share all their traits: see risk.csv"
              .formatted(Words.count(risk.least(), "person")));
    }
    if (risk.smallCells() > 0) {
      journal.say(
          "%s of persons with traits that too few share: see small-cells.csv"
              .formatted(Words.count(risk.smallCells(), "group")));
    }
    if (result.counts().refused() + result.counts().kept() > 0) {
      journal.say("what was left over, and why, is in leftover.ndjson");
    }
    journal.say("tables written to " + folder);
  }
}
