package org.isopter.model.value;

import java.util.List;

/** The eye, or both eyes together, that a finding is about. */
public enum Site implements Concept {
  RIGHT(Code.snomed("362502000", "Entire right eye (body structure)")),
  LEFT(Code.snomed("362503005", "Entire left eye (body structure)")),
  BOTH(Code.snomed("362508001", "Both eyes, entire (body structure)"));

  /** Each eye apart. */
  public static final List<Site> EACH_EYE = List.of(RIGHT, LEFT);

  /** Each eye apart, or both together. */
  public static final List<Site> EACH_OR_BOTH = List.of(RIGHT, LEFT, BOTH);

  /** Only both eyes together: what is said of the person or of the pair. */
  public static final List<Site> PAIR = List.of(BOTH);

  private final Code code;

  Site(Code code) {
    this.code = code;
  }

  @Override
  public String word() {
    return Concept.word(this);
  }

  /** Returns the body site code. */
  @Override
  public Code code() {
    return code;
  }

  /** Returns the fellow eye; both eyes are their own fellow. */
  public Site fellow() {
    return this == RIGHT ? LEFT : this == LEFT ? RIGHT : BOTH;
  }
}
