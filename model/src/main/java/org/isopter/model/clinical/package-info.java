/**
 * Clinical functions: pure, cited, and modest. Each answer says what it says, because of which
 * facts, how surely and after which source; where the facts do not carry an answer, it says that.
 *
 * <p>All of it is information for record-keeping: see {@link Caution}.
 */
@NullMarked
package org.isopter.model.clinical;

import org.isopter.model.clinical.statement.Caution;
import org.jspecify.annotations.NullMarked;
