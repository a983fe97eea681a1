package org.isopter.mapper.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;

/** Any text to the validator: an answer in words, and no error where the strict reader has none. */
public final class ValidatorFuzz {

  private static final ProfileValidator VALIDATOR = ProfileValidator.standard();
  private static final FhirReader STRICT = new FhirReader(Catalogue.standard());

  private ValidatorFuzz() {}

  /** Tries one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    String json = new String(input, UTF_8);
    List<ValidationMessage> said = VALIDATOR.validate(json);
    said.forEach(message -> assertFalse(message.text().isBlank(), message::toString));
    if (STRICT.read(json).isOk()) {
      assertTrue(said.stream().noneMatch(ValidationMessage::isError), said::toString);
    }
  }
}
