/**
 * A document of others taken apart: its resources, what they refer to, of whom and when they speak.
 */
@NullMarked
package org.isopter.mapper.foreign.document;

import org.jspecify.annotations.NullMarked;
