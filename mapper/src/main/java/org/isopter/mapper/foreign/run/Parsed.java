package org.isopter.mapper.foreign.run;

import org.isopter.mapper.foreign.document.DocumentSources;
import org.isopter.mapper.foreign.document.Neighbours;

/** A document that could be read, and where it came from. */
record Parsed(Origin origin, DocumentSources.Source source) {

  boolean isBundle() {
    return Neighbours.type(source.json()).equals("Bundle");
  }
}
