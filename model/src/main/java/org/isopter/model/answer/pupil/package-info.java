/** Closed lists of answers about the pupils and the drugs that act on them. */
@NullMarked
package org.isopter.model.answer.pupil;

import org.jspecify.annotations.NullMarked;
