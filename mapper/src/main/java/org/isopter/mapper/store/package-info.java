/** Tables in a database of this process, their files, and their codebook. */
@NullMarked
package org.isopter.mapper.store;

import org.jspecify.annotations.NullMarked;
