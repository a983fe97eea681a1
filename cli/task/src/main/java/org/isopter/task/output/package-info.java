/** Puts what was made of documents into files and folders. */
@NullMarked
package org.isopter.task.output;

import org.jspecify.annotations.NullMarked;
