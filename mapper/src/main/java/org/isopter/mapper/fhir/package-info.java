/** Examinations as FHIR R4 JSON: one writer and one reader, both over the catalogue. */
@NullMarked
package org.isopter.mapper.fhir;

import org.jspecify.annotations.NullMarked;
