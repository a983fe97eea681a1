package org.isopter.mapper.foreign.reading;

import org.isopter.mapper.json.Raw;

/**
 * A resource of the input and what became of it.
 *
 * @param at where it stood in its document, as a JSON pointer; empty for the document itself
 * @param resource the resource as it came
 * @param outcome what became of it
 */
public record ReadResource(String at, Raw resource, ResourceOutcome outcome) {

  /** Returns {@code Type/id}, or the type alone, or the place where there is no type. */
  public String name() {
    String type = resource.string("resourceType").orElse("");
    String id = resource.string("id").map(text -> "/" + text).orElse("");
    return type.isEmpty() ? "document" + at : type + id;
  }
}
