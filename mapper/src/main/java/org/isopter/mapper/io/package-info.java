/** Streams of bytes that cannot be made endless by whoever sent them. */
@NullMarked
package org.isopter.mapper.io;

import org.jspecify.annotations.NullMarked;
