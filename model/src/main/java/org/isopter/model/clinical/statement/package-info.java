/** What a clinical function answers: a statement, why, how sure, and by which source. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.statement;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
