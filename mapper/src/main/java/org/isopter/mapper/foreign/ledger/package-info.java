/**
 * The account of what was taken from a document, by which rule, and why something was kept as it
 * came.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.foreign.ledger;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
