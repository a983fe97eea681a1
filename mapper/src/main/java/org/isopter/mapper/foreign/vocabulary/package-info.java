/** The words and codes that others use, and what each says in the words of the catalogue. */
@NullMarked
package org.isopter.mapper.foreign.vocabulary;

import org.jspecify.annotations.NullMarked;
