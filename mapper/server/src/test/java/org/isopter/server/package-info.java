/** A FHIR server in the process of the test, and what becomes of records in it. */
@NullMarked
package org.isopter.server;

import org.jspecify.annotations.NullMarked;
