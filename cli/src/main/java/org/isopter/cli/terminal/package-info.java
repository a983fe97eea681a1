/** What a terminal can do; loaded where somebody sits at one and is asked. */
@NullMarked
package org.isopter.cli.terminal;

import org.jspecify.annotations.NullMarked;
