/**
 * How a finding travels as an Observation of FHIR R4, as data: its elements, and the conditions on
 * them. Profiles, views and validators are made from it.
 */
@NullMarked
package org.isopter.model.wire;

import org.jspecify.annotations.NullMarked;
