/** Closed lists of answers about the eye itself: its segments, disc, fundus and pressure. */
@NullMarked
package org.isopter.model.answer.tissue;

import org.jspecify.annotations.NullMarked;
