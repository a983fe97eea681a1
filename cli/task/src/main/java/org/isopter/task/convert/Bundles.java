package org.isopter.task.convert;

import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.fhir.GivenOut;
import org.isopter.mapper.foreign.ForeignWriter;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.hapi.FhirXml;
import org.isopter.mapper.io.Sha256;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputForm;

/**
 * Reads and writes FHIR bundles in the forms of the command line. Only XML needs the general FHIR
 * library, which takes seconds to start: nothing else here may touch it.
 */
public final class Bundles {

  private final FhirReader reader = new FhirReader(Catalogue.standard());
  private final BundleKind kind;
  private final boolean derived;
  private final boolean patients;
  private final boolean addresses;
  private FormerRecords former = FormerRecords.none();
  private GivenOut report = GivenOut.NOTHING;

  /** Makes a reader of bundles of any kind and a writer of those of one kind. */
  public Bundles(BundleKind kind) {
    this(kind, false, false, false);
  }

  /**
   * Makes a writer that may add derived statements, and refer to patients also by a search or by an
   * address.
   */
  public Bundles(BundleKind kind, boolean derived, boolean patients, boolean addresses) {
    this.kind = kind;
    this.derived = derived;
    this.patients = patients;
    this.addresses = addresses;
  }

  /** Returns this writer of transactions, which take back what former records held. */
  Bundles takingBack(FormerRecords records) {
    former = records;
    return this;
  }

  /** Returns this writer, with what the reports say of themselves. */
  Bundles reporting(GivenOut said) {
    report = said;
    return this;
  }

  /** Reads an examination from a bundle as it is written here, or returns its faults. */
  public Result<Exam> read(InputDocument item) {
    return item.form() == InputForm.XML
        ? json(item).flatMap(reader::read)
        : reader.read(item.bytes());
  }

  /** Reads an examination from a bundle as it is written here, or returns its faults. */
  public Result<Exam> read(String text, InputForm form) {
    return form == InputForm.XML
        ? Result.of(() -> FhirXml.toJson(text)).flatMap(reader::read)
        : reader.read(text);
  }

  /** Returns a resource in JSON, whatever its form. */
  public static Result<String> json(InputDocument item) {
    return item.form() == InputForm.XML
        ? Result.of(() -> FhirXml.toJson(item.text()))
        : Result.ok(item.text());
  }

  /**
   * Returns the bundle of an examination, with a line feed at its end.
   *
   * @param source the bytes of the record it came from, whose hash the bundle names
   * @throws IllegalArgumentException when the form is none of FHIR
   */
  public String write(Exam exam, byte[] source, InputForm form) {
    FhirWriter writer = writer(exam, source);
    return switch (form) {
      case JSON -> writer.indented().write(exam) + "\n";
      case NDJSON -> writer.write(exam) + "\n";
      case XML -> FhirXml.toXml(writer.write(exam)).stripTrailing() + "\n";
      case YAML, MESSAGE, CARRIED -> throw notFhir(form);
    };
  }

  /** Returns the bundle of an examination with what goes along with it. */
  public Result<String> write(Exam exam, Carried carried, byte[] source, InputForm form) {
    if (carried.isEmpty()) {
      return Result.ok(write(exam, source, form));
    }
    return text(ForeignWriter.of(kind).with(writer(exam, source)).write(exam, carried), form);
  }

  /** Returns what goes along without an examination as a bundle. */
  public Result<String> write(Carried rest, InputForm form) {
    return text(ForeignWriter.of(kind).write(rest), form);
  }

  private static Result<String> text(String json, InputForm form) {
    return switch (form) {
      case JSON -> Result.ok(ForeignWriter.indented(json) + "\n");
      case NDJSON -> Result.ok(json + "\n");
      case XML -> Result.of(() -> FhirXml.toXml(json).stripTrailing() + "\n");
      case YAML, MESSAGE, CARRIED -> throw notFhir(form);
    };
  }

  private static IllegalArgumentException notFhir(InputForm form) {
    return new IllegalArgumentException("FHIR is not written as " + form);
  }

  private FhirWriter writer(Exam exam, byte[] source) {
    FhirWriter plain = FhirWriter.of(kind);
    FhirWriter placed = addresses ? plain.addressingPatients() : plain;
    FhirWriter found = patients ? plain.referringToPatients() : placed;
    FhirWriter whole =
        (derived ? found.withDerived() : found).from(Sha256.hex(source)).reporting(report);
    return former.of(exam).map(whole::takingBack).orElse(whole);
  }
}
