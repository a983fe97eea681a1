/** What is asked about a note, and the answers. */
@NullMarked
package org.isopter.task.note;

import org.jspecify.annotations.NullMarked;
