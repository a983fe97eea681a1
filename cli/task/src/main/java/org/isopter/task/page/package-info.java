/** Pages for people and programs: the catalogue, the rules, a comparison, a summary. */
@NullMarked
package org.isopter.task.page;

import org.jspecify.annotations.NullMarked;
