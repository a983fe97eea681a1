/** What a clinical function answers: a statement, why, how sure, and by which source. */
@NullMarked
package org.isopter.model.clinical.statement;

import org.jspecify.annotations.NullMarked;
