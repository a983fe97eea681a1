/** The conditions that profiles state beyond single elements, as FHIRPath. */
@NullMarked
package org.isopter.profiles.artefact.invariant;

import org.jspecify.annotations.NullMarked;
