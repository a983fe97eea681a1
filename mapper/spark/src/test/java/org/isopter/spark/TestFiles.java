package org.isopter.spark;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;

/** Files of examinations in every form that a job reads, and the pool that one machine makes. */
final class TestFiles {

  static final String SECRET =
      "a secret for tests and for nothing else, nor for anyone else at all";

  /** What another system might have written: a person, a pressure, and a length that is none. */
  static final String FOREIGN =
      """
      {"resourceType":"Bundle","type":"collection","entry":[\
      {"fullUrl":"https://hospital.example/Patient/7","resource":{"resourceType":"Patient",\
      "id":"7","birthDate":"1931-05-06","gender":"female"}},\
      {"fullUrl":"https://hospital.example/Observation/1","resource":%s},\
      {"fullUrl":"https://hospital.example/Observation/2","resource":%s}]}""";

  static final String PRESSURE =
      """
      {"resourceType":"Observation","status":"final","subject":{"reference":"Patient/7"},\
      "effectiveDateTime":"2026-03-02T10:00:00Z","code":{"coding":[{"system":"http://snomed.info/sct",\
      "code":"41633001"}]},"bodySite":{"coding":[{"system":"http://snomed.info/sct",\
      "code":"362502000"}]},"valueQuantity":{"value":17,"unit":"mm Hg"}}""";

  private static final Catalogue CATALOGUE = Catalogue.standard();
  private static final FhirWriter BUNDLES = FhirWriter.of(BundleKind.COLLECTION);
  private static final RecordWriter RECORDS = new RecordWriter();

  private TestFiles() {}

  /** Writes random examinations, those of the demo, foreign ones and faulty ones to a folder. */
  static void write(Path folder) throws IOException {
    ExamSampler exams = new ExamSampler(CATALOGUE.all(), new SplittableRandom(29));
    Files.createDirectories(folder.resolve("clinic"));
    Files.writeString(folder.resolve("a.ndjson"), lines(exams, 220));
    // A blank line is a line; the last line ends without a line feed.
    String faulty =
        "\n{\"isopter\": 1, \"record\": 7}\r\n\n{\"resourceType\": \n"
            + foreign()
            + "\n"
            + foreign();
    Files.writeString(folder.resolve("b.ndjson"), lines(exams, 30) + faulty);
    Files.writeString(folder.resolve("clinic/demo.ndjson"), demo());
    Files.writeString(folder.resolve("d.ndjson"), lines(exams, 40));
    Files.writeString(folder.resolve("empty.ndjson"), "");
    Files.writeString(folder.resolve("notes.txt"), "not for the pool");
    try (OutputStream out =
        new GZIPOutputStream(Files.newOutputStream(folder.resolve("e.ndjson.gz")))) {
      out.write(lines(exams, 60).getBytes(UTF_8));
    }
  }

  /** Pools the files on one machine, without identities. */
  static PoolResult poolHere(Path folder, Path to) throws IOException {
    PoolPlan plan = PoolPlan.of(to, new Deidentifier(SecretKey.of(SECRET).orThrow(), false));
    PoolReader reader = new PoolReader(CATALOGUE, Options.usual(), Release.R4);
    try (PoolRun run = PoolRun.begin(CATALOGUE, reader, plan)) {
      List<Path> files = files(folder);
      for (int i = 0; i < files.size(); i++) {
        add(run, files.get(i), String.valueOf(i + 1));
      }
      return run.finish();
    }
  }

  private static void add(PoolRun run, Path file, String source) throws IOException {
    long number = 0;
    for (String line : text(file).lines().toList()) {
      number++;
      if (!line.isBlank()) {
        run.add(
            new PoolDocument(source, number, source, PoolDocument.Form.JSON, line.getBytes(UTF_8)));
      }
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(file -> file.toString().matches(".*\\.ndjson(\\.gz)?")).sorted().toList();
    }
  }

  private static String text(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes =
          file.toString().endsWith(".gz")
              ? new GZIPInputStream(in).readAllBytes()
              : in.readAllBytes();
      return new String(bytes, UTF_8);
    }
  }

  private static String lines(ExamSampler exams, int count) {
    StringBuilder lines = new StringBuilder();
    for (int i = 0; i < count; i++) {
      Exam exam = exams.next();
      lines.append(i % 2 == 0 ? RECORDS.line(exam) : BUNDLES.write(exam)).append('\n');
    }
    return lines.toString();
  }

  private static String foreign() {
    return FOREIGN.formatted(PRESSURE, PRESSURE.replace("mm Hg", "furlong"));
  }

  private static String demo() throws IOException {
    RecordReader reader = new RecordReader(CATALOGUE);
    List<String> lines = new ArrayList<>();
    // The tests run in the folder of the module.
    try (Stream<Path> files = Files.list(Path.of("../../docs/demo"))) {
      for (Path file : files.sorted().toList()) {
        String name = file.toString();
        if (!name.endsWith(".md")) {
          RecordFormat format = name.endsWith("json") ? RecordFormat.JSON : RecordFormat.YAML;
          lines.add(BUNDLES.write(reader.read(bytes(file), format).orThrow()));
        }
      }
    }
    return String.join("\n", lines);
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
