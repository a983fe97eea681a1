/** Reads files, lines and folders through, in constant memory, with a report. */
@NullMarked
package org.isopter.mapper.foreign.run;

import org.jspecify.annotations.NullMarked;
