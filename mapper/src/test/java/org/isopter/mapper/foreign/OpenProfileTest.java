package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a profile leaves open may change the meaning of what stands beside it, so that reading does
 * not take the value as if it stood there alone.
 */
class OpenProfileTest {

  private static final ProfileValidator VALIDATOR = ProfileValidator.standard();
  private static final Catalogue CATALOGUE = Catalogue.standard();

  private final String plain = FhirWriter.of(BundleKind.COLLECTION).write(exam());

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"valueString\":\"before the drops were washed out\"",
        "\"valueBoolean\":true",
        "\"valueQuantity\":{\"value\":18,\"unit\":\"mmHg\",\"code\":\"mm[Hg]\",\"system\":\"http://unitsofmeasure.org\"}",
        "\"valueCodeableConcept\":{\"coding\":[{\"system\":\"https://example.org/c\",\"code\":\"left\"}]}"
      })
  void keepsAnObservationWithAComponentThatItDoesNotUnderstand(String value) {
    String open = withComponent(value);
    assertEquals(List.of(), errors(open));
    Reading reading = read(open);
    assertEquals(List.of(), pressures(reading), "a pressure was taken plain");
    assertEquals(List.of("unread-qualifier"), why(reading));
  }

  @Test
  void takesThePressureWhereNothingStandsBesideIt() {
    assertEquals(List.of(), errors(plain));
    assertEquals(1, pressures(read(plain)).size());
  }

  /** The strict reader takes only what it wrote itself. */
  @Test
  void isRefusedByTheStrictReader() {
    Result<Exam> read = new FhirReader(CATALOGUE).read(withComponent("\"valueBoolean\":true"));
    assertNotEquals(List.of(), read.faults());
  }

  private String withComponent(String value) {
    String component =
        """
        "component":[{"code":{"coding":[{"system":"https://example.org/c","code":"q7"}],
        "text":"state"},%s}],"bodySite\""""
            .formatted(value);
    return plain.replace("\"bodySite\"", component);
  }

  private static Exam exam() {
    Header header =
        Header.of(
            Identifier.of("r-1"),
            Party.of(Identifier.of("p-1")),
            OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));
    Fact<?> pressure =
        Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG))
            .by(Tonometry.GOLDMANN);
    return new Exam(header, List.of(pressure));
  }

  private static Reading read(String json) {
    return new ForeignReader(CATALOGUE, Options.usual()).read(json).orThrow();
  }

  private static List<String> why(Reading reading) {
    return reading.resources().stream()
        .flatMap(
            read ->
                read.outcome() instanceof ResourceOutcome.Kept kept
                    ? kept.reasons().stream().map(Reason::word)
                    : Stream.empty())
        .filter(word -> !List.of("panel", "other-resource").contains(word))
        .toList();
  }

  private static List<? extends Fact<?>> pressures(Reading reading) {
    return reading.exams().stream()
        .flatMap(exam -> exam.exam().facts().stream())
        .filter(fact -> fact.finding().equals(Pressures.INTRAOCULAR))
        .toList();
  }

  private static List<ValidationMessage> errors(String json) {
    return VALIDATOR.validate(json).stream().filter(ValidationMessage::isError).toList();
  }
}
