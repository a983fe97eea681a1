/**
 * What follows from an examination: the clinical functions run over its facts. Derived statements
 * stand apart from what was seen, and are computed anew wherever they are needed.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.derive;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
