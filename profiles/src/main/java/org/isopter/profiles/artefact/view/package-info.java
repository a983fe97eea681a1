/** Views of SQL on FHIR, one for each finding. */
@NullMarked
package org.isopter.profiles.artefact.view;

import org.jspecify.annotations.NullMarked;
