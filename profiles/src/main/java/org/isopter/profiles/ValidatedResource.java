package org.isopter.profiles;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.LenientErrorHandler;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hl7.fhir.exceptions.FHIRException;
import org.hl7.fhir.instance.model.api.IBase;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Ratio;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** The validated resource, looked into only where a message must show what was seen. */
final class ValidatedResource {

  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final FhirContext R4 = FhirContext.forR4Cached();

  private final Optional<IBaseResource> resource;

  private ValidatedResource(Optional<IBaseResource> resource) {
    this.resource = resource;
  }

  /** Returns what keeps the text from being a resource at all; nothing when it is one. */
  static List<ValidationMessage> unreadable(String json) {
    try {
      boolean typed = JSON.readTree(json).path("resourceType").isString();
      return typed ? List.of() : fatal("JSON without a resourceType");
    } catch (JacksonException broken) {
      return fatal(broken.getOriginalMessage());
    }
  }

  /** Returns that it is no resource that can be validated. */
  static List<ValidationMessage> fatal(String seen) {
    String text = "saw " + seen + ", wanted a FHIR resource as JSON";
    return List.of(new ValidationMessage(ValidationMessage.Severity.FATAL, "", text));
  }

  public static ValidatedResource of(String json) {
    try {
      var parser = R4.newJsonParser().setParserErrorHandler(new LenientErrorHandler(false));
      return new ValidatedResource(Optional.of(parser.parseResource(json)));
    } catch (DataFormatException unreadable) {
      // The validator says so itself; there is only nothing to show.
      return new ValidatedResource(Optional.empty());
    }
  }

  /** Returns what stands at a path, in words; {@code nothing} where nothing does. */
  String seen(String path) {
    List<String> all = resource.map(root -> evaluate(root, path)).orElse(List.of());
    return all.isEmpty() ? "nothing" : String.join(", ", all);
  }

  private static List<String> evaluate(IBaseResource root, String path) {
    try {
      return R4.newFhirPath().evaluate(root, path, IBase.class).stream()
          .map(ValidatedResource::words)
          .toList();
    } catch (FHIRException | ca.uhn.fhir.fhirpath.FhirPathExecutionException unreachable) {
      return List.of();
    }
  }

  private static String words(IBase element) {
    if (element instanceof Coding coding) {
      return text(coding.getSystem()) + "|" + text(coding.getCode());
    }
    if (element instanceof CodeableConcept concept) {
      return concept.getCoding().stream()
          .map(ValidatedResource::words)
          .collect(Collectors.joining(" + "));
    }
    if (element instanceof Ratio ratio) {
      return words(ratio.getNumerator()) + " over " + words(ratio.getDenominator());
    }
    if (element instanceof Quantity quantity) {
      return words(quantity);
    }
    if (element instanceof ObservationComponentComponent component) {
      return words(component.getCode());
    }
    return element instanceof PrimitiveType<?> primitive
        ? primitive.getValueAsString()
        : element.fhirType();
  }

  private static String text(@Nullable String text) {
    return Objects.toString(text, "");
  }

  private static String words(Quantity quantity) {
    String number = quantity.getValueElement().getValueAsString();
    return text(number) + " " + text(quantity.getUnit()) + " (" + text(quantity.getCode()) + ")";
  }
}
