package org.isopter.mapper.foreign;

/** A document that could be read, and where it came from. */
record Parsed(Origin origin, Sources.Source source) {

  boolean isBundle() {
    return Neighbours.type(source.json()).equals("Bundle");
  }
}
