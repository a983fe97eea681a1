/** Scales of the disc and the retina. */
@NullMarked
package org.isopter.model.clinical.fundus;

import org.jspecify.annotations.NullMarked;
