package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A sector of the optic disc; nasal and temporal are those of the eye that is looked at. */
public enum DiscSector implements Concept {
  SUPERIOR(Code.snomed("264217000", "Superior (qualifier value)")),
  SUPEROTEMPORAL("Superotemporal sector"),
  TEMPORAL(Code.snomed("255570003", "Temporal")),
  INFEROTEMPORAL("Inferotemporal sector"),
  INFERIOR(Code.snomed("261089000", "Inferior (qualifier value)")),
  INFERONASAL("Inferonasal sector"),
  NASAL(Code.snomed("260540009", "Nasal")),
  SUPERONASAL("Superonasal sector");

  private final Code code;

  DiscSector(String display) {
    this.code = Concept.local(this, display);
  }

  DiscSector(Code code) {
    this.code = code;
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
