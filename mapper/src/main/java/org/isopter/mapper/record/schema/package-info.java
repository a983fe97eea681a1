/** The JSON Schema of the record, made from the descriptions of the findings. */
@NullMarked
package org.isopter.mapper.record.schema;

import org.jspecify.annotations.NullMarked;
