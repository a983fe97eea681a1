package org.isopter.mapper.fhir.element;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.math.BigDecimal;
import java.net.URLEncoder;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Code;

/** Writes the FHIR data types that Isopter uses. */
public final class Json {

  private final Sink out;
  private final PatientReference patients;

  /**
   * Makes a writer.
   *
   * @param patients how a patient is referred to beside the identifier
   */
  public Json(Sink out, PatientReference patients) {
    this.out = out;
    this.patients = patients;
  }

  /** Writes a text property. */
  public void text(String name, String value) {
    out.name(name);
    out.text(value);
  }

  /** Writes a property with a text that is written again and again, such as a code. */
  void constant(String name, String value) {
    out.name(name);
    out.constant(value);
  }

  /** Writes a text that is an element of a list. */
  public void text(String value) {
    out.text(value);
  }

  /** Writes a number property, its digits as they are. */
  public void number(String name, BigDecimal value) {
    out.name(name);
    out.number(value);
  }

  /** Writes a boolean property. */
  public void truth(String name, boolean value) {
    out.name(name);
    out.truth(value);
  }

  /** Writes a text property where there is a value. */
  public void text(String name, Optional<String> value) {
    value.ifPresent(present -> text(name, present));
  }

  /** Writes an object property. */
  public void object(String name, Runnable content) {
    out.name(name);
    element(content);
  }

  /** Writes an object that is an element of a list. */
  public void element(Runnable content) {
    out.startObject();
    content.run();
    out.endObject();
  }

  /** Writes a list property. */
  public void list(String name, Runnable elements) {
    out.name(name);
    out.startList();
    elements.run();
    out.endList();
  }

  /** Writes a list of a single object. */
  public void single(String name, Runnable content) {
    list(name, () -> element(content));
  }

  /** Writes a CodeableConcept of one coding. */
  public void concept(String name, Code code) {
    object(name, () -> codings(List.of(code)));
  }

  /** Writes the codings of a CodeableConcept. */
  public void codings(List<Code> codes) {
    list("coding", () -> codes.forEach(out::coding));
  }

  /** Writes a Coding that is an element of a list. */
  public void coding(Code code) {
    out.coding(code);
  }

  /** Writes the properties of an Identifier. */
  public void identifier(String system, String value) {
    text("system", system);
    text("value", value);
  }

  private void identifier(Identifier identifier) {
    text("system", identifier.system());
    text("value", identifier.value());
  }

  /** Writes a person as a logical reference: who they are, not where their data lies. */
  public void party(String type, Party party) {
    if (type.equals("Patient")) {
      text("reference", party.identifier().flatMap(patients::of));
    }
    text("type", type);
    party.identifier().ifPresent(id -> object("identifier", () -> identifier(id)));
    text("display", party.name());
  }

  /** Returns the search for what has an identifier, as a conditional update names it. */
  public static String search(String type, String system, String value) {
    return type
        + "?identifier="
        + URLEncoder.encode(system + "|" + value, UTF_8).replace("+", "%20");
  }

  /** Writes the address of a Reference. */
  public void reference(String urn) {
    text("reference", urn);
  }

  /** Writes a generated Narrative. */
  public void narrative(String div) {
    object(
        "text",
        () -> {
          text("status", "generated");
          text("div", div);
        });
  }
}
