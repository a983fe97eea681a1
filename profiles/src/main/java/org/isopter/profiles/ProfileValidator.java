package org.isopter.profiles;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.validation.FhirValidator;
import java.util.List;
import java.util.Objects;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r5.utils.validation.constants.BestPracticeWarningLevel;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.artefact.Artefacts;
import org.jspecify.annotations.Nullable;

/**
 * Validates FHIR R4 resources against the profiles that they claim, without a network.
 *
 * <p>A resource is checked against the standard and against each profile in its {@code
 * meta.profile}; so is every resource of a bundle. The definitions are loaded when the first
 * resource is validated, which takes seconds; one validator serves many resources and may be used
 * by several threads.
 */
public final class ProfileValidator {

  private static final ProfileValidator STANDARD = new ProfileValidator(Catalogue.standard());

  private final Catalogue catalogue;
  private @Nullable Loaded loaded;

  /** Returns the validator of the standard catalogue: one for all, for it is slow to load. */
  public static ProfileValidator standard() {
    return STANDARD;
  }

  /** Makes a validator for the profiles of a catalogue. */
  public ProfileValidator(Catalogue catalogue) {
    this.catalogue = Objects.requireNonNull(catalogue, "catalogue");
  }

  /**
   * Returns all that is to be said of a resource or a bundle; nothing when it is as it should be.
   *
   * @param json the resource; text that is no JSON gives one fatal message
   */
  public List<ValidationMessage> validate(String json) {
    return load().validate(json);
  }

  private synchronized Loaded load() {
    if (loaded == null) {
      loaded = new Loaded(Artefacts.of(catalogue));
    }
    return loaded;
  }

  /** The library's validator with our definitions. */
  private static final class Loaded {

    private final Definitions definitions;
    private final FhirValidator validator;

    Loaded(Artefacts artefacts) {
      this.definitions = new Definitions(artefacts);
      FhirContext r4 = FhirContext.forR4Cached();
      FhirInstanceValidator module = new FhirInstanceValidator(Support.chain(artefacts));
      module.setBestPracticeWarningLevel(BestPracticeWarningLevel.Ignore);
      this.validator = r4.newValidator().registerValidatorModule(module);
    }

    List<ValidationMessage> validate(String json) {
      List<ValidationMessage> unreadable = ValidatedResource.unreadable(json);
      return unreadable.isEmpty() ? attempt(json) : unreadable;
    }

    /** The library fails on some resources, such as those with a member without a name. */
    private List<ValidationMessage> attempt(String json) {
      try {
        return validateResource(json);
      } catch (RuntimeException | AssertionError failed) {
        return ValidatedResource.fatal("one that the validator failed on (" + failed + ")");
      }
    }

    private List<ValidationMessage> validateResource(String json) {
      List<RawMessage> raw =
          Noise.without(
              definitions,
              validator.validateWithResult(json).getMessages().stream()
                  .map(RawMessage::of)
                  .toList());
      if (raw.isEmpty()) {
        return List.of();
      }
      LibraryWording wording = new LibraryWording(definitions, ValidatedResource.of(json));
      return raw.stream().map(wording::of).distinct().toList();
    }
  }
}
