/** The conformance resources of the record, each made from the catalogue alone. */
@NullMarked
package org.isopter.profiles.artefact;

import org.jspecify.annotations.NullMarked;
