package org.isopter.profiles.artefact.view;

/**
 * A column of a view.
 *
 * @param name the name, in lower case with underscores
 * @param type the FHIR type of its cells
 * @param path the FHIRPath that finds a cell, from the observation; at most one value
 * @param meaning what a cell says
 */
record ViewColumn(String name, String type, String path, String meaning) {}
