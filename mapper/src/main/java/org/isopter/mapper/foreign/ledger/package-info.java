/**
 * The account of what was taken from a document, by which rule, and why something was kept as it
 * came.
 */
@NullMarked
package org.isopter.mapper.foreign.ledger;

import org.jspecify.annotations.NullMarked;
