package org.isopter.mapper.foreign.run;

import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.document.Sources;

/** A document that could be read, and where it came from. */
record Parsed(Origin origin, Sources.Source source) {

  boolean isBundle() {
    return Neighbours.type(source.json()).equals("Bundle");
  }
}
