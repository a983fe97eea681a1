package org.isopter.spark;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.storage.StorageLevel;

/**
 * Pools the documents of files as tables, on as many machines as the session has.
 *
 * <p>Every document is laid out by itself, and the same document gives the same rows: a task that
 * is done again, because its machine was lost, changes nothing. The totals are those of an action,
 * in which Spark counts every piece of the input once, and they must agree with the rows that are
 * in the files in the end.
 */
final class SparkPool {

  private final SparkSession session;
  private final Configuration hadoop;

  SparkPool(SparkSession session) {
    this.session = session;
    this.hadoop = session.sparkContext().hadoopConfiguration();
  }

  /**
   * Pools the documents and returns how many there were.
   *
   * @throws org.isopter.model.value.FaultException when an input is not there, or something is in
   *     the folder already
   */
  Totals run(List<String> inputs, String folder, Identities identities) throws IOException {
    PoolFiles files = PoolFiles.begin(folder, session);
    List<Path> found = InputFiles.find(inputs, hadoop);
    JavaRDD<LaidOut> laid =
        InputLines.of(JavaSparkContext.fromSparkContext(session.sparkContext()), found)
            .layOut(sources(found, identities), identities)
            // Made once and kept on the machines; what is lost with a machine is made again.
            .persist(StorageLevel.MEMORY_AND_DISK_SER());
    try {
      Totals totals = laid.map(LaidOut::totals).fold(Totals.NONE, Totals::plus);
      return files.write(laid, totals);
    } finally {
      laid.unpersist();
    }
  }

  /** A file's name may name a person: tables without identities count the files instead. */
  private static Map<String, String> sources(List<Path> files, Identities identities) {
    Map<String, String> sources = new HashMap<>();
    for (Path file : files) {
      String number = String.valueOf(sources.size() + 1);
      sources.put(file.toString(), identities.stay() ? file.toString() : number);
    }
    return sources;
  }
}
