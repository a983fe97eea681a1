/** JSON and YAML as one tree of nodes that know where they stand in the text. */
@NullMarked
package org.isopter.mapper.record.tree;

import org.jspecify.annotations.NullMarked;
