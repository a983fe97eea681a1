package org.isopter.mapper.fhir.element;

import org.isopter.mapper.json.token.JsonTokens;

/**
 * A member that resource after resource of a document says again. The same text is looked at once:
 * what nothing was left of, and no fault found in, is taken wherever it stands again.
 */
public final class Repeated {

  private final String name;
  private int before = JsonTokens.NONE;

  /** Makes it for the members of a name in one document. */
  public Repeated(String name) {
    this.name = name;
  }

  /** Takes the member of an element, looking at it only where it is new. */
  public void take(ElementCursor holder, Runnable look) {
    if (holder.takeRepeated(name, before)) {
      return;
    }
    int place = holder.place(name);
    int faults = holder.faults();
    look.run();
    if (place != JsonTokens.NONE && holder.isTaken(place, faults)) {
      before = place;
    }
  }
}
