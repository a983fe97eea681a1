package org.isopter.spark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.spark.sql.SparkSession;

/** Spark for tests, on this machine and no network but its own. */
final class Cluster {

  private Cluster() {}

  /** Starts two workers, each a process of its own. */
  static SparkSession twoWorkers(Path marks) throws IOException {
    // Where Spark looks for its jars; the processes have the class path of the tests.
    Files.createDirectories(Path.of(System.getenv("SPARK_HOME"), "jars"));
    return plain("local-cluster[2,1,1024]")
        .config("spark.executor.extraClassPath", System.getProperty("java.class.path"))
        // A worker is over before the second compiler pays off.
        .config("spark.executor.extraJavaOptions", "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC")
        // Small pieces, so that a file is read in several.
        .config("spark.hadoop.mapreduce.input.fileinputformat.split.maxsize", 400_000)
        .config("spark.hadoop.fs.file.impl", Gate.class.getName())
        .config("spark.hadoop." + Gate.MARKS, marks.toString())
        .getOrCreate();
  }

  /** Returns settings under which nothing listens to the network and nothing is said. */
  static SparkSession.Builder plain(String master) {
    return SparkSession.builder()
        .master(master)
        .config("spark.driver.host", "127.0.0.1")
        .config("spark.driver.bindAddress", "127.0.0.1")
        .config("spark.ui.enabled", false)
        // A query of a test is over before a class that is made for it pays off.
        .config("spark.sql.codegen.wholeStage", false)
        .config("spark.sql.codegen.factoryMode", "NO_CODEGEN")
        .config("spark.sql.parquet.compression.codec", "uncompressed")
        .config("spark.sql.shuffle.partitions", 2);
  }
}
