package org.isopter.mapper.fhir;

import java.io.OutputStream;
import java.io.StringWriter;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.isopter.mapper.fhir.element.GeneratorSink;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.mapper.fhir.element.PatientReference;
import org.isopter.mapper.fhir.element.Sink;
import org.isopter.mapper.fhir.element.TextSink;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.value.Code;
import org.isopter.model.wire.BaseElements;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultPrettyPrinter;

/**
 * Writes examinations as FHIR R4 JSON bundles; the same examination always gives the same bytes.
 *
 * <p>Safe for use by several threads at once.
 */
public final class FhirWriter {

  /** The codes of other systems that stand around the findings. */
  public static final List<Code> FRAME_CODES = List.of(BaseElements.EXAM, ExamCodes.ASSEMBLER);

  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          // 1E+2 would not be read as the digits that were written.
          .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
          .build();

  /** Characters that a fact usually takes, and resources around the facts. */
  private static final int OF_FACT = 1_800;

  private static final int AROUND = 4;

  private final BundleKind kind;
  private final Optional<String> hash;
  private final boolean pretty;
  private final boolean derived;
  private final PatientReference patients;
  private final Optional<Code> label;
  private final Optional<Exam> former;
  private final GivenOut report;

  private FhirWriter(
      BundleKind kind,
      Optional<String> hash,
      boolean pretty,
      boolean derived,
      PatientReference patients,
      Optional<Code> label,
      Optional<Exam> former,
      GivenOut report) {
    this.kind = kind;
    this.hash = hash;
    this.pretty = pretty;
    this.derived = derived;
    this.patients = patients;
    this.label = label;
    this.former = former;
    this.report = report;
  }

  /** Returns a writer of bundles of a kind, on one line. */
  public static FhirWriter of(BundleKind kind) {
    return new FhirWriter(
        Objects.requireNonNull(kind, "kind"),
        Optional.empty(),
        false,
        false,
        PatientReference.NONE,
        Optional.empty(),
        Optional.empty(),
        GivenOut.NOTHING);
  }

  /** Returns this writer, indenting what it writes. */
  public FhirWriter indented() {
    return new FhirWriter(kind, hash, true, derived, patients, label, former, report);
  }

  /**
   * Returns this writer, adding an observation for each derived statement. They stand beside the
   * panel of what was seen, and a reader computes them again instead of trusting them.
   */
  public FhirWriter withDerived() {
    return new FhirWriter(kind, hash, pretty, true, patients, label, former, report);
  }

  /**
   * Returns this writer, referring to each patient also by a search for the identifier. A server
   * that takes a transaction replaces it by the patient that it has, so that the patient's
   * examinations can be searched for; one that has no such patient refuses the transaction.
   */
  public FhirWriter referringToPatients() {
    return referring(PatientReference.SEARCH);
  }

  /**
   * Returns this writer, referring to each patient also by an address that follows from the
   * identifier, the same in every examination. No Patient is written: a server that looks whether
   * it is there needs one under that id.
   */
  public FhirWriter addressingPatients() {
    return referring(PatientReference.ADDRESS);
  }

  private FhirWriter referring(PatientReference how) {
    return new FhirWriter(kind, hash, pretty, derived, how, label, former, report);
  }

  /**
   * Returns this writer, naming the source record in the provenance.
   *
   * @param sha256 the SHA-256 of the record's bytes in hexadecimal
   */
  public FhirWriter from(String sha256) {
    return new FhirWriter(
        kind, Optional.of(sha256), pretty, derived, patients, label, former, report);
  }

  /** Returns this writer, putting a security label on each bundle. */
  public FhirWriter labelled(Code security) {
    return new FhirWriter(
        kind, hash, pretty, derived, patients, Optional.of(security), former, report);
  }

  /**
   * Returns this writer of transactions, taking back what a former record holds and the present one
   * does not: an earlier version of the same record, or the one that it amends. A server would keep
   * those observations as they were; each is sent again with the status {@code entered-in-error}.
   *
   * @param record what was sent before
   * @throws IllegalStateException when this writes no transactions
   */
  public FhirWriter takingBack(Exam record) {
    if (kind != BundleKind.TRANSACTION) {
      throw new IllegalStateException("only a transaction takes back what a server has");
    }
    return new FhirWriter(
        kind, hash, pretty, derived, patients, label, Optional.of(record), report);
  }

  /** Returns this writer, with what the report says of itself. */
  public FhirWriter reporting(GivenOut said) {
    return new FhirWriter(kind, hash, pretty, derived, patients, label, former, said);
  }

  /** Writes a bundle to a stream in UTF-8; the stream stays open. */
  public void write(Exam exam, OutputStream out) {
    try (JsonGenerator generator = FACTORY.createGenerator(context(), keepOpen(out))) {
      write(exam, new GeneratorSink(generator, !pretty));
    }
  }

  /** Returns a bundle as text. */
  public String write(Exam exam) {
    if (!pretty) {
      TextSink text = new TextSink(OF_FACT * (exam.facts().size() + AROUND));
      write(exam, text);
      return text.text();
    }
    StringWriter text = new StringWriter(4096);
    try (JsonGenerator generator = FACTORY.createGenerator(context(), text)) {
      write(exam, new GeneratorSink(generator, false));
    }
    return text.toString();
  }

  /** Writes a bundle to a generator, for instance into a tree. */
  public void write(Exam exam, JsonGenerator generator) {
    write(exam, new GeneratorSink(generator, false));
  }

  private void write(Exam exam, Sink sink) {
    Json json = new Json(sink, patients);
    new BundleWriter(json, exam, kind, hash, derived)
        .labelled(label)
        .takingBack(former)
        .reporting(report)
        .write();
  }

  private ObjectWriteContext context() {
    if (!pretty) {
      return ObjectWriteContext.empty();
    }
    return new ObjectWriteContext.Base() {
      @Override
      public tools.jackson.core.PrettyPrinter getPrettyPrinter() {
        return new DefaultPrettyPrinter();
      }

      @Override
      public boolean hasPrettyPrinter() {
        return true;
      }
    };
  }

  private static OutputStream keepOpen(OutputStream out) {
    return new java.io.FilterOutputStream(out) {
      @Override
      public void write(byte[] bytes, int from, int length) throws java.io.IOException {
        out.write(bytes, from, length);
      }

      @Override
      public void close() throws java.io.IOException {
        flush();
      }
    };
  }
}
