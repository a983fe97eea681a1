package org.isopter.model.simulate;

/** What ails an invented person, and in which eyes. The shares are invented. */
public enum Group {
  HEALTHY("Healthy", 0.34, Extent.NONE),
  REFRACTIVE("Refractive error only", 0.20, Extent.BOTH),
  CATARACT("Cataract", 0.14, Extent.BOTH),
  GLAUCOMA("Open-angle glaucoma", 0.12, Extent.BOTH),
  NEUROPATHY("Optic neuritis, one eye", 0.05, Extent.ONE),
  CHIASM("Compression of the chiasm", 0.02, Extent.BOTH),
  STROKE("Field loss of one side after a stroke", 0.03, Extent.BOTH),
  AMBLYOPIA("Amblyopia, one eye", 0.04, Extent.ONE),
  PAPILLOEDEMA("Papilloedema", 0.02, Extent.BOTH),
  HORNER("Horner syndrome", 0.015, Extent.ONE),
  THIRD_NERVE("Third nerve palsy with the pupil", 0.01, Extent.ONE),
  TONIC_PUPIL("Tonic pupil", 0.015, Extent.ONE);

  /** The eyes that are affected. */
  public enum Extent {
    NONE,
    ONE,
    BOTH
  }

  private final String title;
  private final double share;
  private final Extent extent;

  Group(String title, double share, Extent extent) {
    this.title = title;
    this.share = share;
    this.extent = extent;
  }

  /** Returns the name of the group in words. */
  public String title() {
    return title;
  }

  /** Returns the name of the group as one word, such as {@code third-nerve}. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** Returns the share of persons who belong to it. */
  public double share() {
    return share;
  }

  /** Returns the eyes that are affected. */
  public Extent extent() {
    return extent;
  }
}
