/** Options that several commands share, and how their words are read. */
@NullMarked
package org.isopter.cli.option;

import org.jspecify.annotations.NullMarked;
