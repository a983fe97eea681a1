package org.isopter.mapper;

import static java.nio.charset.StandardCharsets.UTF_8;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.model.catalogue.Catalogue;

/** One way to lay a file of lines out as a table, in a process of its own. */
public final class PoolAlone {

  private static final String FLATTEN =
      """
      COPY (SELECT line->>'$.subject.id' AS subject, line->>'$.record.id' AS examination,
          line->>'$.performed' AS performed, finding.key AS finding, eye.key AS eye,
          eye.value AS value
        FROM (SELECT json AS line FROM read_ndjson_objects('%s')),
          json_each(line, '$.findings') AS finding, json_each(finding.value) AS eye)
      TO '%s' (FORMAT parquet, COMPRESSION zstd)""";

  private PoolAlone() {}

  /** Runs: how, input, output. */
  public static void main(String... arguments) throws IOException, SQLException {
    Path input = Path.of(arguments[1]);
    Path output = Path.of(arguments[2]);
    switch (arguments[0]) {
      case "duckdb" -> duckdb(input, output);
      case "hapi" -> hapi(input, output);
      default -> isopter(input, output);
    }
  }

  private static void duckdb(Path input, Path output) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement()) {
      statement.execute("SET memory_limit = '2GB'");
      statement.execute(FLATTEN.formatted(input, output));
    }
  }

  private static void hapi(Path input, Path output) throws IOException {
    IParser parser = FhirContext.forR4().newJsonParser();
    try (BufferedReader lines = Files.newBufferedReader(input);
        BufferedWriter out = Files.newBufferedWriter(output)) {
      String line = lines.readLine();
      while (line != null) {
        for (Bundle.BundleEntryComponent entry :
            parser.parseResource(Bundle.class, line).getEntry()) {
          if (entry.getResource() instanceof Observation observation) {
            out.write(row(observation));
          }
        }
        line = lines.readLine();
      }
    }
  }

  private static String row(Observation observation) {
    String value =
        observation.getValue() instanceof Quantity quantity ? quantity.getValue() + "" : "";
    return String.join(
        ",",
        observation.getSubject().getIdentifier().getValue(),
        observation.getCode().getCodingFirstRep().getCode(),
        observation.getBodySite().getCodingFirstRep().getCode(),
        value,
        "\n");
  }

  private static void isopter(Path input, Path output) throws IOException {
    Catalogue catalogue = Catalogue.standard();
    PoolReader reader = new PoolReader(catalogue, Options.usual(), Release.R4);
    SecretKey key = SecretKey.of("91c4e07fa8b35d6290e1a7c4f3d85b26").orThrow();
    PoolPlan plan = PoolPlan.of(output, new Deidentifier(key, false));
    try (PoolRun run = PoolRun.begin(catalogue, reader, plan);
        BufferedReader lines = Files.newBufferedReader(input)) {
      long number = 0;
      String line = lines.readLine();
      while (line != null) {
        number++;
        byte[] bytes = line.getBytes(UTF_8);
        run.add(new PoolDocument("1", number, "1", PoolDocument.Form.JSON, bytes));
        line = lines.readLine();
      }
      run.finish();
    }
  }
}
