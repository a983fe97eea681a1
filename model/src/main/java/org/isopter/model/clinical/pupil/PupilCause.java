package org.isopter.model.clinical.pupil;

import static org.isopter.model.answer.pupil.PupilResponse.ABSENT;
import static org.isopter.model.answer.pupil.PupilResponse.BRISK;
import static org.isopter.model.answer.pupil.PupilResponse.SLUGGISH;
import static org.isopter.model.answer.pupil.PupilResponse.TONIC;
import static org.isopter.model.clinical.pupil.PupilInequality.LEFT_LARGER_IN_DARK;
import static org.isopter.model.clinical.pupil.PupilInequality.NONE;
import static org.isopter.model.clinical.pupil.PupilInequality.RIGHT_LARGER_IN_LIGHT;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;

/**
 * A state of the pupils in the truth table, with the signs it allows. Rows are written for the
 * right side; the left is their mirror image.
 */
public enum PupilCause {
  NO_LESION("no lesion, simple inequality included", false) {
    @Override
    Row row() {
      return Row.quick().unequal(simple());
    }
  },
  OPTIC_NERVE_COMPLETE("complete optic nerve lesion", true) {
    @Override
    Row row() {
      return Row.quick().rightLit(ABSENT).afferent(DefectSide.RIGHT);
    }
  },
  OPTIC_NERVE_PARTIAL("partial optic nerve lesion", true) {
    @Override
    Row row() {
      return Row.quick().rightLit(SLUGGISH).afferent(DefectSide.RIGHT);
    }
  },
  BOTH_OPTIC_NERVES_EQUALLY("equal lesions of both optic nerves", false) {
    @Override
    Row row() {
      return Row.quick().light(EnumSet.of(SLUGGISH));
    }
  },
  THIRD_NERVE("third nerve lesion with the pupil", true) {
    @Override
    Row row() {
      return Row.quick().rightWatched(EnumSet.of(ABSENT)).near(ABSENT).unequal(largerInLight());
    }
  },
  PHARMACOLOGICAL_MYDRIASIS("pharmacological mydriasis", true) {
    @Override
    Row row() {
      return THIRD_NERVE.row();
    }
  },
  TONIC_PUPIL("tonic pupil (Adie)", true) {
    @Override
    Row row() {
      // An old tonic pupil may be the smaller one.
      Set<PupilInequality> unequal = EnumSet.complementOf(EnumSet.of(NONE));
      unequal.removeAll(
          EnumSet.of(PupilInequality.RIGHT_LARGER_IN_DARK, PupilInequality.RIGHT_LARGER_ALIKE));
      return Row.quick().rightWatched(EnumSet.of(SLUGGISH, TONIC)).near(TONIC).unequal(unequal);
    }
  },
  HORNER("oculosympathetic lesion (Horner)", true) {
    @Override
    Row row() {
      return Row.quick().unequal(EnumSet.of(LEFT_LARGER_IN_DARK));
    }
  },
  OPTIC_TRACT("optic tract lesion", true) {
    @Override
    Row row() {
      return Row.quick().light(EnumSet.of(BRISK, SLUGGISH)).afferent(DefectSide.LEFT);
    }
  },
  /** The table prints no light responses here; they are those of the tract, after the wiring. */
  PRETECTUM("lesion of the pretectum or its brachium, without a field defect", true) {
    @Override
    Row row() {
      return OPTIC_TRACT.row();
    }
  },
  DORSAL_MIDBRAIN("dorsal midbrain lesion, both pupils large", false) {
    @Override
    Row row() {
      return Row.quick().light(EnumSet.of(SLUGGISH));
    }
  },
  ARGYLL_ROBERTSON("Argyll Robertson pupils, small and irregular", false) {
    @Override
    Row row() {
      return Row.quick().light(EnumSet.of(ABSENT, SLUGGISH)).unequal(any());
    }
  },
  OPTIC_NERVE_AND_FIXED_PUPIL("optic nerve lesion with a fixed pupil of the same eye", true) {
    @Override
    Row row() {
      return Row.quick()
          .rightLit(ABSENT)
          .rightWatched(EnumSet.of(ABSENT))
          .near(ABSENT)
          .afferent(DefectSide.RIGHT)
          .unequal(largerInLight());
    }
  },
  IRIS_DAMAGE("damaged iris or posterior synechiae", true) {
    @Override
    Row row() {
      return Row.quick().rightWatched(EnumSet.of(SLUGGISH)).near(SLUGGISH).unequal(any());
    }
  };

  private final String words;
  private final boolean sided;

  PupilCause(String words, boolean sided) {
    this.words = words;
    this.sided = sided;
  }

  /** Returns the state in words, without a side. */
  public String words() {
    return words;
  }

  /** Says whether it is of one side. */
  public boolean isSided() {
    return sided;
  }

  /** Returns the signs that the state allows when it is of the right side. */
  abstract Row row();

  private static Set<PupilInequality> simple() {
    return EnumSet.complementOf(
        EnumSet.of(RIGHT_LARGER_IN_LIGHT, PupilInequality.LEFT_LARGER_IN_LIGHT));
  }

  private static Set<PupilInequality> largerInLight() {
    return EnumSet.of(RIGHT_LARGER_IN_LIGHT);
  }

  private static Set<PupilInequality> any() {
    return EnumSet.allOf(PupilInequality.class);
  }

  /**
   * The signs that a state allows.
   *
   * @param direct of the right pupil
   * @param leftConsensual of the left pupil, the right eye lit
   * @param leftDirect of the left pupil
   * @param consensual of the right pupil, the left eye lit
   * @param near of the right pupil; the left pupil's is brisk
   * @param unequal the inequality
   * @param afferent the afferent defect
   */
  record Row(
      Set<PupilResponse> direct,
      Set<PupilResponse> leftConsensual,
      Set<PupilResponse> leftDirect,
      Set<PupilResponse> consensual,
      Set<PupilResponse> near,
      Set<PupilInequality> unequal,
      DefectSide afferent) {

    /** Returns the row of brisk and equal pupils. */
    static Row quick() {
      Set<PupilResponse> brisk = EnumSet.of(BRISK);
      return new Row(brisk, brisk, brisk, brisk, brisk, EnumSet.of(NONE), DefectSide.NONE);
    }

    Row light(Set<PupilResponse> all) {
      return new Row(all, all, all, all, near, unequal, afferent);
    }

    Row rightLit(PupilResponse answer) {
      Set<PupilResponse> lit = EnumSet.of(answer);
      return new Row(lit, lit, leftDirect, consensual, near, unequal, afferent);
    }

    Row rightWatched(Set<PupilResponse> own) {
      return new Row(own, leftConsensual, leftDirect, own, near, unequal, afferent);
    }

    Row near(PupilResponse answer) {
      Set<PupilResponse> own = EnumSet.of(answer);
      return new Row(direct, leftConsensual, leftDirect, consensual, own, unequal, afferent);
    }

    Row unequal(Set<PupilInequality> allowed) {
      return new Row(direct, leftConsensual, leftDirect, consensual, near, allowed, afferent);
    }

    Row afferent(DefectSide side) {
      return new Row(direct, leftConsensual, leftDirect, consensual, near, unequal, side);
    }

    boolean allows(PupilSigns signs) {
      return allows(direct, signs.right().direct())
          && allows(consensual, signs.right().consensual())
          && allows(near, signs.right().near())
          && allows(leftDirect, signs.left().direct())
          && allows(leftConsensual, signs.left().consensual())
          && allows(EnumSet.of(BRISK), signs.left().near())
          && signs.inequality().filter(seen -> !unequal.contains(seen)).isEmpty()
          && signs.afferent().filter(seen -> seen != afferent).isEmpty();
    }

    private static boolean allows(Set<PupilResponse> cell, Optional<PupilResponse> seen) {
      return seen.filter(answer -> !allows(cell, answer)).isEmpty();
    }

    private static boolean allows(Set<PupilResponse> cell, PupilResponse seen) {
      // A pupil that reacts, nobody said how briskly, may be any that is not without an answer.
      return seen == PupilResponse.REACTIVE
          ? cell.stream().anyMatch(answer -> answer != ABSENT)
          : cell.contains(seen);
    }
  }
}
