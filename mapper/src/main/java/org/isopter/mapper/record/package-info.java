/**
 * The local record: an examination as JSON or YAML, read and written by one interpreter over the
 * catalogue, and the JSON Schema that other programs check such records with.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.record;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
