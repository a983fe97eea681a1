package org.isopter.mapper.fhir;

import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Term;

/** A finding that no other line of the project knows: one entry must be enough. */
final class MadeUp {

  static final Finding<Term> CORNEAL_SENSATION =
      Finding.of("corneal-sensation", "Corneal sensation")
          .value(Shapes.oneOfWords("corneal-sensation", "normal", "reduced", "absent"))
          .cite("common practice, no source")
          .build();

  /** What Isopter ships, and the made-up finding. */
  static final Catalogue CATALOGUE = Catalogue.standard().plus(CORNEAL_SENSATION);

  private MadeUp() {}
}
