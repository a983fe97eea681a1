package org.isopter.mapper.pool;

import java.io.Serializable;
import java.util.regex.Pattern;

/**
 * What went in and what came of it. Everything that went in is either pooled or left over.
 *
 * @param documents the documents that were read
 * @param refused those that could not be
 * @param resources the records, and the FHIR resources in all bundles
 * @param pooled those whose findings are in the tables
 * @param kept those that were kept whole
 * @param examinations the examinations that they became
 * @param facts the facts of these
 */
public record PoolCounts(
    long documents,
    long refused,
    long resources,
    long pooled,
    long kept,
    long examinations,
    long facts)
    implements Serializable {

  /** Nothing yet. */
  public static final PoolCounts NONE = new PoolCounts(0, 0, 0, 0, 0, 0, 0);

  /** Checks that nothing is unaccounted for. */
  public PoolCounts {
    if (resources != pooled + kept) {
      throw new IllegalArgumentException(resources + " is not " + pooled + " and " + kept);
    }
  }

  static PoolCounts refused(long documents) {
    return new PoolCounts(documents, documents, 0, 0, 0, 0, 0);
  }

  /** Returns the numbers as text. */
  String text() {
    return "%d %d %d %d %d %d %d"
        .formatted(documents, refused, resources, pooled, kept, examinations, facts);
  }

  /**
   * Reads what {@link #text} wrote.
   *
   * @throws IllegalArgumentException when it is something else
   */
  static PoolCounts parse(String text) {
    long[] all = Pattern.compile(" ").splitAsStream(text).mapToLong(Long::parseLong).toArray();
    if (all.length != 7) {
      throw new IllegalArgumentException(all.length + " numbers");
    }
    return new PoolCounts(all[0], all[1], all[2], all[3], all[4], all[5], all[6]);
  }

  /** Returns the sum. */
  public PoolCounts plus(PoolCounts more) {
    return new PoolCounts(
        documents + more.documents,
        refused + more.refused,
        resources + more.resources,
        pooled + more.pooled,
        kept + more.kept,
        examinations + more.examinations,
        facts + more.facts);
  }
}
