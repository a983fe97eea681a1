/** Files that appear whole or not at all, and streams of bytes that nobody can make endless. */
@NullMarked
package org.isopter.mapper.io;

import org.jspecify.annotations.NullMarked;
