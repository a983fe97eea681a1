/** Guided entry of an examination, step by step, without a terminal of its own. */
@NullMarked
package org.isopter.model.entry;

import org.jspecify.annotations.NullMarked;
