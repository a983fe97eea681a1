/** Pools examinations of any number of sources as research tables without identities. */
@NullMarked
package org.isopter.mapper.pool;

import org.jspecify.annotations.NullMarked;
