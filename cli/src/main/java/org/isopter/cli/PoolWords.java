package org.isopter.cli;

import java.nio.file.Path;
import org.isopter.mapper.pool.PoolCounts;
import org.isopter.mapper.pool.PoolResult;

/** Says what came of a pool. */
final class PoolWords {

  private final Journal journal;
  private final Path folder;

  PoolWords(Journal journal, Path folder) {
    this.journal = journal;
    this.folder = folder;
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
    if (result.smallCells() > 0) {
      journal.say(
          "%s of persons with traits that too few share: see small-cells.csv"
              .formatted(Words.count(result.smallCells(), "group")));
    }
    if (counts.refused() + counts.kept() > 0) {
      journal.say("what was left over, and why, is in leftover.ndjson");
    }
    if (counts.refused() > 0) {
      journal.raise(ExitStatus.REFUSED);
    }
    journal.say("tables written to " + folder);
  }
}
