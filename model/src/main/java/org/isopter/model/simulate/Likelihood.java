package org.isopter.model.simulate;

/** How often something turns up that either is there or not. */
public enum Likelihood {
  SUBJECT_NAME("The person's name is given", 0.8),
  PERFORMER("The examiner is named", 0.6),
  HEADER_REMARK("The examination has a remark", 0.25),
  REMARK("A pressure, a disc or an acuity has a remark", 0.08),
  DEVICE("The instrument of a pressure is written", 0.3),
  OWN_TIME("A pressure has a time of its own", 0.12),
  PRELIMINARY("The record is preliminary", 0.04),
  SIZES_IN_LIGHT_AND_DARK("Pupils are also measured in bright and dim light", 0.25),
  CHIASM_FIELD("Compression of the chiasm: confrontation shows the loss", 0.85),
  STROKE_FIELD("Stroke: confrontation shows the loss", 0.97),
  NEUROPATHY_FIELD("Optic neuritis: confrontation shows a loss of the centre", 0.6),
  GLAUCOMA_FIELD("Glaucoma: confrontation shows a loss above and nasal", 0.15),
  REGION_ABSENT("A region that is lost shows nothing, else less", 0.6),
  CHIASM_PALLOR("Compression of the chiasm: the disc is pale on the temporal side", 0.5),
  HORNER_SWEAT("Horner syndrome: less sweat on the side", 0.3),
  GLAUCOMA_DEFECT("Glaucoma: an afferent defect", 0.2),
  NEURITIS_SWELLING("Optic neuritis: the disc is swollen at first", 0.35),
  PERIMETRY_ELSEWHERE("Perimetry is part of the visit where the group has no field loss", 0.05);

  private final String title;
  private final double share;

  Likelihood(String title, double share) {
    this.title = title;
    this.share = share;
  }

  /** Returns what it is, in words. */
  public String title() {
    return title;
  }

  /** Returns how often it is so. */
  public double share() {
    return share;
  }
}
