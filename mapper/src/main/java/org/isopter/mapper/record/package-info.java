/**
 * The local record: an examination as JSON or YAML, read and written by one interpreter over the
 * catalogue, and the JSON Schema that other programs check such records with.
 */
@NullMarked
package org.isopter.mapper.record;

import org.jspecify.annotations.NullMarked;
