package org.isopter.spark;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.spark.sql.SparkSession;
import org.isopter.mapper.pool.PoolCounts;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Pools records and FHIR as a job for {@code spark-submit}. */
@Command(
    name = "PoolJob",
    mixinStandardHelpOptions = true,
    description = {
      "Lays records and FHIR bundles, one on each line of NDJSON files, out as research tables.",
      "Identities are taken out by a secret key; what could not be read is listed with reasons."
    })
public final class PoolJob implements Callable<Integer> {

  private final Map<String, String> environment;

  @Spec @Nullable CommandSpec spec;

  @Parameters(
      paramLabel = "INPUT",
      arity = "1..*",
      description = "Files, folders or patterns, on any file system that Hadoop reads.")
  List<String> inputs = List.of();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FOLDER",
      required = true,
      description = "Folder to make; it may not hold anything yet.")
  String output = "";

  @Option(
      names = "--key-file",
      paramLabel = "FILE",
      description = {
        "File that holds the secret from which pseudonyms are made; at least 24 bytes, at random.",
        "Without it, the environment variable " + SecretKey.VARIABLE + " is taken."
      })
  @Nullable String keyFile;

  @Option(names = "--identified", description = "Keep identities; then no key is needed.")
  boolean identified;

  @Option(names = "--free-text", description = "Keep remarks, which may name anyone.")
  boolean freeText;

  PoolJob(Map<String, String> environment) {
    this.environment = environment;
  }

  /** Runs the job; what goes wrong is reported on standard error, with a status that is not 0. */
  public static void main(String[] arguments) {
    int status = line(System.getenv()).execute(arguments);
    if (status != 0) {
      System.exit(status);
    }
  }

  static CommandLine line(Map<String, String> environment) {
    return new CommandLine(new PoolJob(environment));
  }

  @Override
  public Integer call() throws IOException {
    // A session of a cluster takes a while: what can be refused without one is.
    if (!identified && keyFile == null && !environment.containsKey(SecretKey.VARIABLE)) {
      throw misuse(
          "no key: pseudonyms are made from a secret; name a file that holds one with --key-file,"
              + " set "
              + SecretKey.VARIABLE
              + ", or say --identified to keep identities");
    }
    try (SparkSession session = SparkSession.builder().appName("isopter pool").getOrCreate()) {
      Configuration hadoop = session.sparkContext().hadoopConfiguration();
      tell(new SparkPool(session).run(inputs, output, identities(hadoop)));
      return 0;
    } catch (FaultException refused) {
      throw misuse(refused.faults().get(0).toString());
    }
  }

  private Identities identities(Configuration hadoop) {
    if (identified) {
      return Identities.kept();
    }
    Result<String> secret =
        keyFile == null
            ? Result.ok(environment.getOrDefault(SecretKey.VARIABLE, ""))
            : read(keyFile, hadoop);
    Result<Identities> found = secret.flatMap(text -> Identities.taken(text, freeText));
    if (found instanceof Result.Ok<Identities> good) {
      return good.value();
    }
    throw misuse(found.faults().get(0).toString());
  }

  private static Result<String> read(String file, Configuration hadoop) {
    Path path = new Path(file);
    try (InputStream in = path.getFileSystem(hadoop).open(path)) {
      return Result.ok(new String(in.readAllBytes(), UTF_8));
    } catch (IOException failed) {
      return Result.refused(
          Fault.of(file, String.valueOf(failed.getMessage()), "a file with the secret, in UTF-8"));
    }
  }

  private void tell(Totals totals) {
    PoolCounts counts = totals.counts();
    say("%d documents read, %d of them refused".formatted(counts.documents(), counts.refused()));
    say(
        "%d resources in them: %d pooled, %d left over"
            .formatted(counts.resources(), counts.pooled(), counts.kept()));
    say(
        "%d examinations with %d facts: %d rows of findings, %d rows of eyes"
            .formatted(counts.examinations(), counts.facts(), totals.findings(), totals.eyes()));
    if (totals.small() > 0) {
      say(
          "%d groups of persons with traits that too few share stay in the tables: see %s/%s"
              .formatted(totals.small(), output, SmallGroups.FILE));
    }
    if (totals.left() > 0) {
      say("what was left over, and why, is in " + output + "/" + PoolFiles.LEFT);
    }
    say("tables written to " + output);
  }

  private void say(String words) {
    commandLine().getErr().println("isopter: " + words);
  }

  private CommandLine.ParameterException misuse(String words) {
    return new CommandLine.ParameterException(commandLine(), words);
  }

  private CommandLine commandLine() {
    return Optional.ofNullable(spec).orElseThrow().commandLine();
  }
}
