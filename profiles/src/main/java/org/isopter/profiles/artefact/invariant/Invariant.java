package org.isopter.profiles.artefact.invariant;

import java.util.List;
import org.hl7.fhir.r4.model.ElementDefinition.ConstraintSeverity;
import org.hl7.fhir.r4.model.ElementDefinition.ElementDefinitionConstraintComponent;

/**
 * A condition that a profile states and that no element alone can state.
 *
 * @param key its stable name, unique over all profiles
 * @param human what is wanted, in one sentence
 * @param expression the condition in FHIRPath, on the element that carries it
 * @param seen the paths, from the same element, of what a message must show beside the sentence
 */
public record Invariant(String key, String human, String expression, List<String> seen) {

  private static final int LONGEST_KEY = 64;

  public Invariant {
    seen = List.copyOf(seen);
    if (!key.matches("[A-Za-z0-9.-]+") || key.length() > LONGEST_KEY) {
      throw new IllegalArgumentException(key + " cannot be the key of an invariant");
    }
  }

  public static Invariant of(String key, String human, String expression, String... seen) {
    return new Invariant(key, human, expression, List.of(seen));
  }

  public ElementDefinitionConstraintComponent constraint() {
    return new ElementDefinitionConstraintComponent()
        .setKey(key)
        .setSeverity(ConstraintSeverity.ERROR)
        .setHuman(human)
        .setExpression(expression);
  }
}
