package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.mapper.store.TableFormat;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;

/** Pools for tests. */
public final class Pools {

  public static final SecretKey KEY =
      SecretKey.of("a secret for tests and for nothing else, nor for anyone else at all").orThrow();

  private static final Catalogue CATALOGUE = Catalogue.standard();
  private static final RecordWriter RECORDS = new RecordWriter();

  private Pools() {}

  public static PoolReader reader() {
    return new PoolReader(CATALOGUE, Options.usual(), Release.R4);
  }

  public static PoolDocument record(Exam exam, long line) {
    return json(RECORDS.line(exam), line);
  }

  public static PoolDocument json(String text, long line) {
    return new PoolDocument("1", line, "1", PoolDocument.Form.JSON, text.getBytes(UTF_8));
  }

  /** Returns a plan of every file that there can be. */
  public static PoolPlan everything(Path folder, boolean identified, boolean freeText) {
    PoolPlan plan =
        identified
            ? PoolPlan.identified(folder)
            : PoolPlan.of(folder, new Deidentifier(KEY, freeText));
    return plan.in(List.of(TableFormat.values())).withDatabase().withBundles();
  }

  public static PoolResult run(PoolPlan plan, List<PoolDocument> documents) throws IOException {
    try (PoolRun run = PoolRun.begin(CATALOGUE, reader(), plan)) {
      for (PoolDocument document : documents) {
        run.add(document);
      }
      return run.finish();
    }
  }
}
