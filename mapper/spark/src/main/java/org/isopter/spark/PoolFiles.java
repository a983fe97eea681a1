package org.isopter.spark;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.apache.spark.sql.functions.col;

import java.io.IOException;
import java.io.OutputStream;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * The folder of a pool. The counts are written last and only when they agree with what is in the
 * files: a folder without them is not whole.
 */
final class PoolFiles {

  static final String LEFT = "leftover";
  static final String COUNTS = "counts.json";

  private static final StructType FINDINGS = Schemas.of(FindingsTable.table());
  private static final StructType EYES = Schemas.of(ExaminationsTable.table(Catalogue.standard()));

  private final Path folder;
  private final FileSystem files;
  private final SparkSession session;

  private PoolFiles(Path folder, FileSystem files, SparkSession session) {
    this.folder = folder;
    this.files = files;
    this.session = session;
  }

  /**
   * Begins a folder.
   *
   * @throws FaultException when something is in it already
   */
  static PoolFiles begin(String folder, SparkSession session) throws IOException {
    Path path = new Path(folder);
    FileSystem files = path.getFileSystem(session.sparkContext().hadoopConfiguration());
    if (files.exists(path)
        && (!files.getFileStatus(path).isDirectory() || files.listStatus(path).length > 0)) {
      throw new FaultException(
          new Fault(
              folder,
              "something that is there already",
              "a new or empty folder",
              "name another folder, or take this one away first"));
    }
    return new PoolFiles(path, files, session);
  }

  void write(JavaRDD<LaidOut> laid, Totals totals) throws IOException {
    writeFindings(laid);
    writeEyes(laid);
    writeLeft(laid);
    check("rows of findings", count(FindingsTable.NAME, FINDINGS), totals.findings());
    check("rows of eyes", count(ExaminationsTable.NAME, EYES), totals.eyes());
    check("lines left over", session.read().text(path(LEFT)).count(), totals.left());
    try (OutputStream out = files.create(new Path(folder, COUNTS), false)) {
      out.write(totals.json().getBytes(UTF_8));
    }
  }

  /** Most questions are of a few findings: a folder for each, so that the others stay unread. */
  private void writeFindings(JavaRDD<LaidOut> laid) {
    JavaRDD<Row> rows = laid.flatMap(each -> each.findings().iterator());
    session
        .createDataFrame(rows, FINDINGS)
        .hint("rebalance", col("finding"))
        .sortWithinPartitions("finding", "subject", "examination")
        .write()
        .partitionBy("finding")
        .option("compression", "zstd")
        .parquet(path(FindingsTable.NAME));
  }

  /** What is asked of the wide table is the course of persons: theirs stand together. */
  private void writeEyes(JavaRDD<LaidOut> laid) {
    JavaRDD<Row> rows = laid.flatMap(each -> each.eyes().iterator());
    session
        .createDataFrame(rows, EYES)
        .hint("rebalance", col("subject"))
        .sortWithinPartitions("subject", "examination")
        .write()
        .option("compression", "zstd")
        .parquet(path(ExaminationsTable.NAME));
  }

  private void writeLeft(JavaRDD<LaidOut> laid) {
    JavaRDD<String> lines = laid.flatMap(each -> each.left().iterator());
    Dataset<String> texts = session.createDataset(lines.rdd(), Encoders.STRING());
    texts.hint("rebalance", col("value")).write().text(path(LEFT));
  }

  private long count(String table, StructType schema) {
    return session.read().schema(schema).parquet(path(table)).count();
  }

  private static void check(String what, long written, long wanted) throws IOException {
    if (written != wanted) {
      throw new IOException(
          "the files hold %d %s, and %d were made: the pool is not whole"
              .formatted(written, what, wanted));
    }
  }

  private String path(String name) {
    return new Path(folder, name).toString();
  }
}
