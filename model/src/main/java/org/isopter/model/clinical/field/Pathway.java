package org.isopter.model.clinical.field;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A part of the visual pathway that a table of field loss names. */
public enum Pathway {
  MEDIA("clouded media (cornea, lens, vitreous)", null),
  RETINA("retina", null),
  OPTIC_NERVE("optic nerve or disc", null),
  OPTIC_NERVE_NEAR_CHIASM("optic nerve near the chiasm", OPTIC_NERVE),
  NOT_ORGANIC("artefact or non-organic loss", null),
  JUNCTION("junction of optic nerve and chiasm", null),
  CHIASM("optic chiasm, crossing fibres", null),
  CHIASM_FROM_BELOW("optic chiasm from below", CHIASM),
  CHIASM_FROM_ABOVE("optic chiasm from above", CHIASM),
  CHIASM_FROM_THE_SIDES("optic chiasm pressed from outside (rare)", null),
  RETROCHIASMAL("pathway behind the chiasm, not further localisable", null),
  OPTIC_TRACT("optic tract", RETROCHIASMAL),
  LATERAL_GENICULATE("lateral geniculate nucleus", RETROCHIASMAL),
  ANTERIOR_RADIATION("anterior optic radiation", RETROCHIASMAL),
  TEMPORAL_RADIATION("temporal optic radiation", RETROCHIASMAL),
  PARIETAL_RADIATION("parietal optic radiation", RETROCHIASMAL),
  OCCIPITAL_CORTEX("occipital cortex", RETROCHIASMAL),
  LOWER_CALCARINE_BANK("lower bank of the calcarine cortex", OCCIPITAL_CORTEX),
  UPPER_CALCARINE_BANK("upper bank of the calcarine cortex", OCCIPITAL_CORTEX),
  OCCIPITAL_CORTEX_BEHIND("occipital cortex with its anterior end spared", OCCIPITAL_CORTEX);

  private final String words;
  private final @Nullable Pathway whole;

  Pathway(String words, @Nullable Pathway whole) {
    this.words = words;
    this.whole = whole;
  }

  /** Returns the part in words. */
  public String words() {
    return words;
  }

  /** Says whether this part is the other or lies within it. */
  public boolean isWithin(Pathway other) {
    return this == other
        || Optional.ofNullable(whole).filter(one -> one.isWithin(other)).isPresent();
  }
}
