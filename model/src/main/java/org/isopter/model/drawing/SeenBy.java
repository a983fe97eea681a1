package org.isopter.model.drawing;

import java.util.Locale;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.model.value.Site;

/** From where a picture is seen: which eye is on which side of it. */
@API(status = Status.STABLE)
public enum SeenBy {
  /** Pupils, movements and discs as the examiner sees them, fields as the person sees them. */
  USUAL,
  /** All as the examiner sees it who faces the person: the right eye is on the left. */
  EXAMINER,
  /** Pupils, movements and fields as the person has them: the right eye is on the right. */
  PERSON;

  private static final double LEFT_SIDE = 140;
  private static final double RIGHT_SIDE = 420;

  /** Returns the place of an eye across a picture. */
  double x(Site eye) {
    return (eye == Site.RIGHT) == (this == PERSON) ? RIGHT_SIDE : LEFT_SIDE;
  }

  /** Returns 1 where the person's right is on the right of a picture, else -1. */
  int right() {
    return this == PERSON ? 1 : -1;
  }

  /** Returns this view, or another where it is the usual one. */
  SeenBy orUsually(SeenBy usual) {
    return this == USUAL ? usual : this;
  }

  /** Returns the word that names the view. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Returns the view in words, behind what is pictured. */
  String words() {
    return this == PERSON
        ? ", as the person sees them: left eye on the left"
        : ", as the examiner sees them: right eye on the left";
  }
}
