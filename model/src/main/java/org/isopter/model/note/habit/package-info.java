/** What people write and mean by it: the phrases of the library and those of a department. */
@NullMarked
package org.isopter.model.note.habit;

import org.jspecify.annotations.NullMarked;
