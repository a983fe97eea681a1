/**
 * Invented examinations that look like those of a clinic: for tests, demonstrations and load. The
 * persons do not exist, and nothing in them may be taken as epidemiology.
 */
@org.jspecify.annotations.NullMarked
package org.isopter.model.sample;
