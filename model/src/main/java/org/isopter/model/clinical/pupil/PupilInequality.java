package org.isopter.model.clinical.pupil;

import java.math.BigDecimal;
import java.util.Optional;
import org.isopter.model.value.Site;

/** Which pupil is larger, and in which light by more. */
public enum PupilInequality {
  NONE(Optional.empty(), Light.ALIKE),
  RIGHT_LARGER_IN_LIGHT(Optional.of(Site.RIGHT), Light.MORE_IN_LIGHT),
  RIGHT_LARGER_IN_DARK(Optional.of(Site.RIGHT), Light.MORE_IN_DARK),
  RIGHT_LARGER_ALIKE(Optional.of(Site.RIGHT), Light.ALIKE),
  LEFT_LARGER_IN_LIGHT(Optional.of(Site.LEFT), Light.MORE_IN_LIGHT),
  LEFT_LARGER_IN_DARK(Optional.of(Site.LEFT), Light.MORE_IN_DARK),
  LEFT_LARGER_ALIKE(Optional.of(Site.LEFT), Light.ALIKE);

  /** In which light the difference is greater. */
  public enum Light {
    /** The larger pupil constricts less. */
    MORE_IN_LIGHT,
    /** The smaller pupil dilates less; healthy pupils may do so too. */
    MORE_IN_DARK,
    /** The difference is the same in either light. */
    ALIKE
  }

  private final Optional<Site> larger;
  private final Light light;

  PupilInequality(Optional<Site> larger, Light light) {
    this.larger = larger;
    this.light = light;
  }

  /** Returns the eye with the larger pupil; empty when the pupils are equal. */
  public Optional<Site> larger() {
    return larger;
  }

  /** Returns in which light the difference is greater. */
  public Light light() {
    return light;
  }

  /** Returns the inequality seen in a mirror: right and left changed over. */
  public PupilInequality mirrored() {
    return of(larger.map(Site::fellow), light);
  }

  static Optional<PupilInequality> of(Anisocoria bright, Anisocoria dim) {
    Optional<Site> inDark = larger(dim);
    Optional<Site> larger = larger(bright).or(() -> inDark);
    boolean turns = inDark.isPresent() && !inDark.equals(larger);
    return turns
        ? Optional.empty()
        : Optional.of(
            larger
                .map(eye -> of(larger, light(towards(eye, bright).subtract(towards(eye, dim)))))
                .orElse(NONE));
  }

  /** A difference no greater than repeated measuring gives is none. */
  private static Optional<Site> larger(Anisocoria seen) {
    return seen.larger().filter(any -> seen.difference().compareTo(Anisocoria.REPEATABILITY) > 0);
  }

  private static BigDecimal towards(Site eye, Anisocoria seen) {
    boolean other = seen.larger().filter(larger -> larger != eye).isPresent();
    return other ? seen.difference().negate() : seen.difference();
  }

  /** A change no greater than repeated measuring gives is none. */
  private static Light light(BigDecimal more) {
    if (more.abs().compareTo(Anisocoria.REPEATABILITY) <= 0) {
      return Light.ALIKE;
    }
    return more.signum() > 0 ? Light.MORE_IN_LIGHT : Light.MORE_IN_DARK;
  }

  private static PupilInequality of(Optional<Site> larger, Light light) {
    return larger.map(eye -> valueOf(eye + "_LARGER_" + suffix(light))).orElse(NONE);
  }

  private static String suffix(Light light) {
    return light == Light.ALIKE ? "ALIKE" : light.name().replace("MORE_", "");
  }

  String words() {
    String eye = larger.map(Site::word).orElse("neither");
    return switch (light) {
      case ALIKE -> alike();
      case MORE_IN_LIGHT ->
          "The " + eye + " pupil is larger, more so in bright light: it constricts less.";
      case MORE_IN_DARK ->
          "The "
              + eye
              + " pupil is larger, more so in dim light: the smaller pupil dilates less. The difference"
              + " alone does not tell why.";
    };
  }

  private String alike() {
    return larger
        .map(
            eye ->
                "The "
                    + eye.word()
                    + " pupil is larger, by as much in bright as in dim light, as far as measuring"
                    + " tells.")
        .orElse(
            "The pupils are equal in bright and in dim light, as measured; that excludes no"
                + " lesion.");
  }
}
