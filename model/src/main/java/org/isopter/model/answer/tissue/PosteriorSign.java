package org.isopter.model.answer.tissue;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A sign in the back of the eye other than of the disc. */
public enum PosteriorSign implements Concept {
  RETINAL_HAEMORRHAGE(Code.snomed("28998008", "Retinal hemorrhage (disorder)")),
  FLAME_HAEMORRHAGE(Code.snomed("247132001", "Retinal flame hemorrhage (disorder)")),
  DOT_HAEMORRHAGE(Code.snomed("247133006", "Retinal dot hemorrhage (disorder)")),
  MICROANEURYSMS("Microaneurysms"),
  RETINAL_EXUDATES(Code.snomed("39832008", "Retinal exudates")),
  HARD_EXUDATES("Hard exudates"),
  COTTON_WOOL_SPOTS("Cotton wool spots"),
  MACULAR_OEDEMA(Code.snomed("37231002", "Macular retinal edema (disorder)")),
  MACULAR_STAR("Macular star"),
  CHERRY_RED_SPOT("Cherry-red spot"),
  VENOUS_BEADING("Venous beading"),
  ARTERIOLAR_NARROWING("Narrowed arterioles"),
  DISC_NEW_VESSELS(Code.snomed("247099009", "Optic disc neovascularization (disorder)")),
  RETINAL_NEW_VESSELS(Code.snomed("61267008", "Retinal neovascularization")),
  DISC_DRUSEN(Code.snomed("33629003", "Drusen of optic disc (finding)")),
  VITREOUS_HAEMORRHAGE(Code.snomed("31341008", "Vitreous hemorrhage")),
  RETINAL_DETACHMENT(Code.snomed("42059000", "Retinal detachment")),
  RETINAL_TEAR(Code.snomed("95690009", "Retinal tear"));

  private final Code code;

  PosteriorSign(String display) {
    this.code = Concept.local(this, display);
  }

  PosteriorSign(Code code) {
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
