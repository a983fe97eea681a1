/**
 * The questions by which an examination is asked for in a form of another system: one for each
 * value and part that a finding of the catalogue may have at an eye.
 */
@NullMarked
package org.isopter.model.form;

import org.jspecify.annotations.NullMarked;
