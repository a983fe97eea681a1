/** Writes an examination in each form, reads it again and compares. */
@NullMarked
package org.isopter.task.roundtrip;

import org.jspecify.annotations.NullMarked;
