package org.isopter.model.catalogue;

import org.isopter.model.answer.tissue.FundusMethod;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Term;

/** Whether there is an eye, and whether one sees into it. */
public final class Globes {

  static final Entries ENTRIES = new Entries();

  /** Whether there is an eye in the socket. */
  public static final Finding<GlobeState> STATE =
      ENTRIES.add(
          Finding.of("globe", "Eye in the socket")
              .value(Shapes.oneOf(GlobeState.class))
              .cite("common practice, no source")
              .build());

  /** The reflex of light from the fundus. */
  public static final Finding<Term> RED_REFLEX =
      ENTRIES.add(
          Finding.of("red-reflex", "Red reflex")
              .value(Shapes.oneOfWords("red-reflex", "full", "reduced", "absent", "white"))
              .cite("common practice, no source")
              .note("Full is what was seen, not that the eye is healthy.")
              .build());

  /** How well the fundus could be seen. */
  public static final Finding<Term> FUNDUS_VIEW =
      ENTRIES.add(
          Finding.of("fundus-view", "View of the fundus")
              .value(Shapes.oneOfWords("fundus-view", "clear", "hazy", "no-view"))
              .by(FundusMethod.class)
              .cite("common practice, no source")
              .build());

  private Globes() {}
}
