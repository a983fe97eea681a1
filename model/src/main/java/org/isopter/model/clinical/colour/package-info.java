/** Colour vision: plate tests by edition and rule, red saturation. */
@NullMarked
package org.isopter.model.clinical.colour;

import org.jspecify.annotations.NullMarked;
