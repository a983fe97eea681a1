/** Finds files, folders and streams and takes them apart into documents. */
@NullMarked
package org.isopter.task.input;

import org.jspecify.annotations.NullMarked;
