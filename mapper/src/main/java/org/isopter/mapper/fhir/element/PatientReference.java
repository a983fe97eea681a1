package org.isopter.mapper.fhir.element;

import java.util.Optional;
import org.isopter.model.exam.Identifier;

/** How a patient is referred to beside the identifier. */
public enum PatientReference {
  /** Not at all: who it is, not where the data lies. */
  NONE,

  /** By a search for the identifier, which a server replaces by the patient that it finds. */
  SEARCH,

  /**
   * By the address of a patient whose id is the UUID of the identifier with its system, the same in
   * every examination: what asks for one person's observations, such as a view, finds them by it.
   */
  ADDRESS;

  Optional<String> of(Identifier identifier) {
    String system = identifier.system().orElse("");
    return switch (this) {
      case NONE -> Optional.empty();
      case SEARCH -> Optional.of(Json.search("Patient", system, identifier.value()));
      case ADDRESS -> Optional.of("Patient/" + NameId.of(system + "|" + identifier.value()));
    };
  }
}
