/** How an item is read: which words belong to which eye, and what facts they make. */
@NullMarked
package org.isopter.model.note.grammar;

import org.jspecify.annotations.NullMarked;
