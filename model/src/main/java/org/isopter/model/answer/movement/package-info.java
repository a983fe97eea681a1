/** Closed lists of answers about alignment, movements and double vision. */
@NullMarked
package org.isopter.model.answer.movement;

import org.jspecify.annotations.NullMarked;
