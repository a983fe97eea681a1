package org.isopter.profiles;

import java.util.List;
import java.util.Objects;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.compiled.CompiledValidator;
import org.isopter.profiles.compiled.Verdict;

/**
 * Validates FHIR R4 resources as {@link ProfileValidator} does, and asks it only where the checks
 * that are compiled from the profiles do not decide.
 *
 * <p>Its verdict is that of the reference validator. Its words may be fewer: what follows from a
 * fault that is named is not named again. One validator may be used by several threads.
 */
public final class QuickValidator {

  private final CompiledValidator compiled;
  private final ProfileValidator reference;

  private QuickValidator(Catalogue catalogue, ProfileValidator reference) {
    this.compiled = new CompiledValidator(catalogue);
    this.reference = reference;
  }

  /** Makes a validator for the profiles of a catalogue. */
  public QuickValidator(Catalogue catalogue) {
    this(Objects.requireNonNull(catalogue, "catalogue"), new ProfileValidator(catalogue));
  }

  /** Returns a validator of the standard catalogue, which asks the one that all share. */
  public static QuickValidator standard() {
    return new QuickValidator(Catalogue.standard(), ProfileValidator.standard());
  }

  /**
   * Returns all that is to be said of a resource or a bundle; nothing when it is as it should be.
   *
   * @param json the resource; text that is no JSON gives one fatal message
   */
  public List<ValidationMessage> validate(String json) {
    Verdict verdict = compiled.judge(Objects.requireNonNull(json, "json"));
    if (verdict instanceof Verdict.Valid) {
      return List.of();
    }
    return verdict instanceof Verdict.Invalid invalid
        ? invalid.breaches().stream().map(QuickValidator::message).toList()
        : reference.validate(json);
  }

  private static ValidationMessage message(Verdict.Breach breach) {
    return new ValidationMessage(ValidationMessage.Severity.ERROR, breach.path(), breach.text());
  }
}
