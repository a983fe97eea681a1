package org.isopter.mapper.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.vocabulary.ForeignRule;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.hapi.FhirXml;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;

/** Writes what the fuzzer starts from: our own demo, notes, fixtures and examples, nothing else. */
public final class Seeds {

  private static final int SAMPLES = 30;

  private final Path folder;

  private Seeds(Path folder) {
    this.folder = folder;
  }

  /**
   * Writes the seeds, a folder for each target, and makes the folders for what is found.
   *
   * @param arguments the root of the project, the folder to write to, and the target to be run
   */
  public static void main(String... arguments) throws IOException {
    Path root = Path.of(arguments[0]);
    Path folder = Path.of(arguments[1]);
    Files.createDirectories(folder.resolve("corpus").resolve(arguments[2]));
    Files.createDirectories(folder.resolve("found"));
    Seeds seeds = new Seeds(folder.resolve("seeds"));
    seeds.notes(root.resolve("model/src/test/resources/notes"));
    seeds.records(root.resolve("docs/demo"));
    seeds.samples();
    seeds.rules();
    seeds.shapes(root.resolve("mapper/src/test/resources/foreign"));
  }

  private void notes(Path notes) throws IOException {
    for (Path note : files(notes, ".txt")) {
      seed("NoteFuzz", Files.readString(note, UTF_8));
    }
  }

  private void records(Path demo) throws IOException {
    RecordReader reader = new RecordReader(Catalogue.standard());
    for (Path file : files(demo, "")) {
      RecordFormat format = RecordFormat.ofFileName(file.toString()).orElse(RecordFormat.YAML);
      String text = Files.readString(file, UTF_8);
      if (reader.read(text, format).isOk()) {
        exam(reader.read(text, format).orThrow(), text);
      }
    }
  }

  /** Small bundles of ours: the fuzzer cuts those of a whole examination. */
  private void samples() throws IOException {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(1));
    for (int i = 0; i < SAMPLES; i++) {
      Exam exam = exams.next();
      exam(new Exam(exam.header(), exam.facts().subList(0, 1)), new RecordWriter().line(exam));
    }
  }

  private void exam(Exam exam, String record) throws IOException {
    seed("RecordFuzz", record);
    seed("RecordFuzz", new RecordWriter().line(exam));
    for (BundleKind kind : BundleKind.values()) {
      fhir(FhirWriter.of(kind).write(exam));
    }
    seed("XmlFuzz", FhirXml.toXml(FhirWriter.of(BundleKind.COLLECTION).write(exam)));
  }

  private void rules() throws IOException {
    StringBuilder lines = new StringBuilder();
    for (ForeignRule rule : ForeignRules.all()) {
      fhir(rule.takes().json());
      fhir(rule.refuses().json());
      lines.append(rule.takes().json().replace('\n', ' ')).append('\n');
      seed("LinesFuzz", rule.takes().json().replace('\n', ' ') + "\n{oops\n\n[1]\n");
      seed("XmlFuzz", FhirXml.toXml(rule.takes().json()));
    }
    seed("LinesFuzz", lines.toString());
  }

  private void shapes(Path shapes) throws IOException {
    for (Path file : files(shapes, "json")) {
      String target = file.toString().endsWith(".ndjson") ? "LinesFuzz" : "FhirFuzz";
      seed(target, Files.readString(file, UTF_8));
    }
  }

  private void fhir(String json) throws IOException {
    for (String target : List.of("FhirFuzz", "ValidatorFuzz", "XmlFuzz")) {
      seed(target, json);
    }
  }

  private void seed(String target, String text) throws IOException {
    Path of = Files.createDirectories(folder.resolve(target));
    Files.writeString(of.resolve("seed-" + Integer.toHexString(text.hashCode())), text, UTF_8);
  }

  private static List<Path> files(Path folder, String ending) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    }
  }
}
