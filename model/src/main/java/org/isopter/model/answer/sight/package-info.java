/** Closed lists of answers about seeing: charts, correction, colour, fields, refraction. */
@NullMarked
package org.isopter.model.answer.sight;

import org.jspecify.annotations.NullMarked;
