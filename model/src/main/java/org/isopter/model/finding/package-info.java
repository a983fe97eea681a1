/**
 * The description language: what a finding is, how its value is laid out, and what may be recorded.
 */
@NullMarked
package org.isopter.model.finding;

import org.jspecify.annotations.NullMarked;
