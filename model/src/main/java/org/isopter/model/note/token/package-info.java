/** A note cut into words, numbers and marks, and how they are looked at one after another. */
@NullMarked
package org.isopter.model.note.token;

import org.jspecify.annotations.NullMarked;
