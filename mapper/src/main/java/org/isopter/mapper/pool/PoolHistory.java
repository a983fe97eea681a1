package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.isopter.mapper.fhir.Version;
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * What a pool that is added to has read: a keyed hash of each document, from which nobody without
 * the key can tell whether they hold one, and how it was pooled. The same document is read once,
 * wherever it lies.
 */
final class PoolHistory {

  /** The file in the folder of the pool. */
  static final String FILE = "additions.txt";

  private static final String COUNTS = "counts";

  /** Of a keyed hash, as many digits as a long has: one in 10^7 of a million documents is lost. */
  private static final int DIGITS = 16;

  private final Deidentifier key;
  private final Map<String, String> settings = new LinkedHashMap<>();
  private final TreeSet<Long> documents = new TreeSet<>();
  private PoolCounts counts = PoolCounts.NONE;
  private long skipped;

  private PoolHistory(Deidentifier key, Map<String, String> settings) {
    this.key = key;
    this.settings.put("key", key.digest("key"));
    settings.forEach((name, text) -> this.settings.put(name, key.digest(text)));
  }

  /**
   * Reads that of a pool, or begins one.
   *
   * @param older the folder of the pool; empty where one is begun
   * @param persons what is known of the persons
   * @param columns the names of the columns of the tables
   * @throws FaultException when the pool has none, or was made otherwise than now
   */
  static PoolHistory of(
      Optional<Path> older,
      PoolPlan plan,
      PoolReader reader,
      Optional<PersonsFile> persons,
      List<String> columns)
      throws IOException {
    Deidentifier key = plan.deidentifier().orElseThrow();
    Map<String, String> settings = new LinkedHashMap<>();
    settings.put("version", Version.TEXT + columns);
    settings.put("way to take out identities", key.settings());
    settings.put("way to read the inputs", reader.settings());
    settings.put("file of persons", persons.map(PersonsFile::text).orElse(""));
    settings.put("choice of bundles", Boolean.toString(plan.bundles()));
    return older.isPresent() ? read(older.get(), key, settings) : new PoolHistory(key, settings);
  }

  private static PoolHistory read(Path pool, Deidentifier key, Map<String, String> settings)
      throws IOException {
    Path file = pool.resolve(FILE);
    if (!Files.isRegularFile(file)) {
      throw fault(pool, "a pool that was made without --add", "one that was begun with it");
    }
    PoolHistory history = new PoolHistory(key, settings);
    Map<String, String> head = new HashMap<>();
    for (String line : Files.readAllLines(file)) {
      int blank = line.lastIndexOf(": ");
      if (blank > 0) {
        head.put(line.substring(0, blank), line.substring(blank + 2));
      } else {
        history.documents.add(Long.parseUnsignedLong(line, 16));
      }
    }
    // Under another key, every hash is another.
    for (Map.Entry<String, String> setting : history.settings.entrySet()) {
      if (!setting.getValue().equals(head.get(setting.getKey()))) {
        throw fault(
            pool,
            "a pool that was made with another " + setting.getKey(),
            "the same for what is added, or all pooled again");
      }
    }
    history.counts = PoolCounts.parse(head.getOrDefault(COUNTS, ""));
    return history;
  }

  private static FaultException fault(Path pool, String seen, String wanted) {
    return new FaultException(Fault.of(pool.toString(), seen, wanted));
  }

  /** Says whether a document was not read yet, and takes note of it. */
  boolean isNew(PoolDocument document) {
    String digest =
        key.digest(new String(document.bytes(), java.nio.charset.StandardCharsets.ISO_8859_1));
    boolean first = documents.add(Long.parseUnsignedLong(digest.substring(0, DIGITS), 16));
    skipped += first ? 0 : 1;
    return first;
  }

  /** Returns how many documents had been read already. */
  long skipped() {
    return skipped;
  }

  /** Returns what had gone in before. */
  PoolCounts counts() {
    return counts;
  }

  void write(Path to, PoolCounts all) throws IOException {
    try (BufferedWriter writer = Files.newBufferedWriter(to, UTF_8)) {
      for (Map.Entry<String, String> setting : settings.entrySet()) {
        writer.write(setting.getKey() + ": " + setting.getValue() + "\n");
      }
      writer.write(COUNTS + ": " + all.text() + "\n");
      for (long document : documents) {
        writer.write(Long.toHexString(document) + "\n");
      }
    }
  }
}
