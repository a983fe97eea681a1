/** Reads the answers to the form of an examination. */
@NullMarked
package org.isopter.mapper.foreign.form;

import org.jspecify.annotations.NullMarked;
