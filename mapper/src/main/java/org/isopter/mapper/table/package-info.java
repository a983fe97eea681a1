/** Examinations as flat tables: the columns come from the catalogue, the rows from examinations. */
@NullMarked
package org.isopter.mapper.table;

import org.jspecify.annotations.NullMarked;
