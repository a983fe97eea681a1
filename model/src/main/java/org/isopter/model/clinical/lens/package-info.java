/** Lenses: power vectors, transposition, vertex distance, prism. */
@NullMarked
package org.isopter.model.clinical.lens;

import org.jspecify.annotations.NullMarked;
