package org.isopter.model.catalogue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Whether a deviation is held back by looking with both eyes. */
public enum Control implements Concept {
  LATENT("Latent: only when one eye is covered"),
  INTERMITTENT("Intermittent"),
  MANIFEST("Manifest: always");

  private final Code code;

  Control(String display) {
    this.code = Concept.local(this, display);
  }

  @Override
  public String word() {
    return Concept.word(this);
  }

  @Override
  public Code code() {
    return code;
  }
}
