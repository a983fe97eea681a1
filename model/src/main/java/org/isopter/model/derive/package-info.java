/**
 * What follows from an examination: the clinical functions run over its facts. Derived statements
 * stand apart from what was seen, and are computed anew wherever they are needed.
 */
@NullMarked
package org.isopter.model.derive;

import org.jspecify.annotations.NullMarked;
