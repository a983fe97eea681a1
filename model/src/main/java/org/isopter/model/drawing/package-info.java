/**
 * Pictures of an examination as plain SVG: pupils, fields, discs and movements.
 *
 * <p>What was not examined is drawn as such and never as normal. Every picture says in words what
 * it shows; nothing is said by colour alone.
 */
@NullMarked
package org.isopter.model.drawing;

import org.jspecify.annotations.NullMarked;
