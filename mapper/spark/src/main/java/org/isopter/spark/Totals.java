package org.isopter.spark;

import java.io.Serializable;
import java.util.LinkedHashMap;
import java.util.Map;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.pool.DocumentRows;
import org.isopter.mapper.pool.PoolCounts;

/**
 * How much there was.
 *
 * @param counts what went in and what came of it
 * @param findings the rows of the long table
 * @param eyes the rows of the wide table
 * @param steps the rows of the usual steps
 * @param left the lines of what was left over
 * @param small the groups of persons with traits that too few share; 0 until they are counted
 */
record Totals(PoolCounts counts, long findings, long eyes, long steps, long left, long small)
    implements Serializable {

  /** Nothing yet. */
  static final Totals NONE = new Totals(PoolCounts.NONE, 0, 0, 0, 0, 0);

  static Totals of(DocumentRows rows) {
    return new Totals(
        rows.counts(),
        rows.findings().size(),
        rows.eyes().size(),
        rows.steps().size(),
        rows.left().size(),
        0);
  }

  Totals plus(Totals more) {
    return new Totals(
        counts.plus(more.counts),
        findings + more.findings,
        eyes + more.eyes,
        steps + more.steps,
        left + more.left,
        small + more.small);
  }

  Totals withSmall(long groups) {
    return new Totals(counts, findings, eyes, steps, left, groups);
  }

  /** Returns the numbers as JSON on one line. */
  String json() {
    Map<String, Raw> all = new LinkedHashMap<>();
    put(all, "documents", counts.documents());
    put(all, "refused", counts.refused());
    put(all, "resources", counts.resources());
    put(all, "pooled", counts.pooled());
    put(all, "kept", counts.kept());
    put(all, "examinations", counts.examinations());
    put(all, "facts", counts.facts());
    put(all, "findings_rows", findings);
    put(all, "examinations_rows", eyes);
    put(all, "steps_rows", steps);
    put(all, "leftover_lines", left);
    put(all, "small_groups", small);
    return RawJson.write(new Raw.Obj(all)) + "\n";
  }

  private static void put(Map<String, Raw> all, String name, long number) {
    all.put(name, new Raw.Leaf(Raw.Kind.NUMBER, Long.toString(number)));
  }
}
