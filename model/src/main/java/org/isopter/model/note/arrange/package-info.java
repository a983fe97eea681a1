/** Words put into the order and the marks in which items are read, before any item is. */
@NullMarked
package org.isopter.model.note.arrange;

import org.jspecify.annotations.NullMarked;
