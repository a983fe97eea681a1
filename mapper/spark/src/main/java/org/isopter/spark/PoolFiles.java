package org.isopter.spark;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.apache.spark.sql.functions.col;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.isopter.mapper.privacy.RiskReport;
import org.isopter.mapper.store.Codebook;
import org.isopter.mapper.store.CodebookRow;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.EyeRow;
import org.isopter.mapper.table.FindingRow;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.StepRow;
import org.isopter.mapper.table.StepsTable;
import org.isopter.mapper.table.Table;
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

  private static final Table<FindingRow> FINDINGS = FindingsTable.table();
  private static final Table<EyeRow> EYES = ExaminationsTable.table(Catalogue.standard());
  private static final Table<StepRow> STEPS = StepsTable.table();

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

  /** Writes everything and returns the totals with what was counted by the way. */
  Totals write(JavaRDD<LaidOut> laid, Totals totals) throws IOException {
    writeFindings(laid);
    writeByPerson(EYES, laid.flatMap(each -> each.eyes().iterator()));
    writeByPerson(STEPS, laid.flatMap(each -> each.steps().iterator()));
    writeLeft(laid);
    List<CodebookRow> codebook = new ArrayList<>();
    codebook.addAll(counted(FINDINGS, laid.flatMap(each -> each.findings().iterator())));
    codebook.addAll(counted(EYES, laid.flatMap(each -> each.eyes().iterator())));
    codebook.addAll(counted(STEPS, laid.flatMap(each -> each.steps().iterator())));
    write("codebook.csv", Codebook.csv(codebook));
    write("codebook.md", Codebook.page(codebook));
    write(RiskReport.FILE, Risk.of(laid));
    List<String> small = SmallGroups.of(laid);
    write(SmallGroups.FILE, SmallGroups.csv(small));
    check(FINDINGS, totals.findings());
    check(EYES, totals.eyes());
    check(STEPS, totals.steps());
    check("lines left over", session.read().text(path(LEFT)).count(), totals.left());
    Totals whole = totals.withSmall(small.size());
    write(COUNTS, whole.json());
    return whole;
  }

  private static List<CodebookRow> counted(Table<?> table, JavaRDD<Row> rows) {
    return rows.aggregate(new Tally(table.columns().size()), Tally::add, Tally::add).rows(table);
  }

  private void write(String name, String text) throws IOException {
    try (OutputStream out = files.create(new Path(folder, name), false)) {
      out.write(text.getBytes(UTF_8));
    }
  }

  /** Most questions are of a few findings: a folder for each, so that the others stay unread. */
  private void writeFindings(JavaRDD<LaidOut> laid) {
    JavaRDD<Row> rows = laid.flatMap(each -> each.findings().iterator());
    session
        .createDataFrame(rows, Schemas.of(FINDINGS))
        .hint("rebalance", col("finding"))
        .sortWithinPartitions("finding", "subject", "examination")
        .write()
        .partitionBy("finding")
        .option("compression", "zstd")
        .parquet(path(FindingsTable.NAME));
  }

  /** What is asked of these is the course of persons: the rows of one stand together. */
  private void writeByPerson(Table<?> table, JavaRDD<Row> rows) {
    session
        .createDataFrame(rows, Schemas.of(table))
        .hint("rebalance", col("subject"))
        .sortWithinPartitions("subject", "examination")
        .write()
        .option("compression", "zstd")
        .parquet(path(table.name()));
  }

  private void writeLeft(JavaRDD<LaidOut> laid) {
    JavaRDD<String> lines = laid.flatMap(each -> each.left().iterator());
    Dataset<String> texts = session.createDataset(lines.rdd(), Encoders.STRING());
    texts.hint("rebalance", col("value")).write().text(path(LEFT));
  }

  private Dataset<Row> read(Table<?> table) {
    return session.read().schema(Schemas.of(table)).parquet(path(table.name()));
  }

  private void check(Table<?> table, long wanted) throws IOException {
    check("rows of " + table.name(), read(table).count(), wanted);
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
