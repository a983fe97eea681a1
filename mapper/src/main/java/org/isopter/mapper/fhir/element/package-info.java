/** The elements and data types of FHIR: taken out of a document, and written into one. */
@NullMarked
package org.isopter.mapper.fhir.element;

import org.jspecify.annotations.NullMarked;
