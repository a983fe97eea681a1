/** The items that are understood, one class for each subject of the examination. */
@NullMarked
package org.isopter.model.note.item;

import org.jspecify.annotations.NullMarked;
