package org.isopter.model.clinical.pupil;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.pupil.PupilSigns.Pupil;
import org.isopter.model.clinical.statement.Fit;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class PupilStatesTest {

  private static final Map<String, PupilState> STATES =
      Map.ofEntries(
          Map.entry("normal", both(PupilCause.NO_LESION)),
          Map.entry("right optic nerve, complete", right(PupilCause.OPTIC_NERVE_COMPLETE)),
          Map.entry("right optic nerve, partial", right(PupilCause.OPTIC_NERVE_PARTIAL)),
          Map.entry("both optic nerves, equal", both(PupilCause.BOTH_OPTIC_NERVES_EQUALLY)),
          Map.entry("right third nerve with pupil", right(PupilCause.THIRD_NERVE)),
          Map.entry("right pharmacological mydriasis", right(PupilCause.PHARMACOLOGICAL_MYDRIASIS)),
          Map.entry("right tonic (Adie)", right(PupilCause.TONIC_PUPIL)),
          Map.entry("right Horner", right(PupilCause.HORNER)),
          Map.entry("right optic tract", right(PupilCause.OPTIC_TRACT)),
          Map.entry("right pretectal/brachium", right(PupilCause.PRETECTUM)),
          Map.entry("dorsal midbrain", both(PupilCause.DORSAL_MIDBRAIN)),
          Map.entry("Argyll Robertson", both(PupilCause.ARGYLL_ROBERTSON)),
          Map.entry(
              "right optic nerve + right fixed pupil",
              right(PupilCause.OPTIC_NERVE_AND_FIXED_PUPIL)),
          Map.entry("right traumatic iris / posterior synechiae", right(PupilCause.IRIS_DAMAGE)));

  /** The responses that say how briskly a pupil answers. */
  private static final List<PupilResponse> EXACT =
      List.of(
          PupilResponse.BRISK, PupilResponse.SLUGGISH, PupilResponse.TONIC, PupilResponse.ABSENT);

  static Stream<CheckRow> rows() {
    return CheckTable.PUPIL_TRUTH_TABLE.rows();
  }

  private static PupilState right(PupilCause cause) {
    return new PupilState(cause, Site.RIGHT);
  }

  private static PupilState both(PupilCause cause) {
    return new PupilState(cause, Site.BOTH);
  }

  @ParameterizedTest
  @MethodSource("rows")
  void allowsExactlyWhatItsRowPrints(CheckRow row) {
    PupilState state = STATES.get(row.name());
    Set<PupilSigns> printed = printed(row);
    Set<PupilSigns> allowed =
        allSigns().stream()
            .filter(signs -> PupilState.fitting(signs).all().contains(state))
            .collect(Collectors.toSet());
    assertFalse(printed.isEmpty());
    assertEquals(printed, allowed);
  }

  /** Builds every set of signs that a row of the table stands for, from its words. */
  private static Set<PupilSigns> printed(CheckRow row) {
    Set<PupilSigns> signs = new HashSet<>();
    String first = row.cell("light_R_R_direct");
    // The one row without light responses: they are those of the row before it.
    String light = first.isEmpty() ? "reduced mildly if at all" : first;
    for (PupilResponse rr : responses(light, light)) {
      for (PupilResponse rl : responses(row.cell("light_R_L_consensual"), light)) {
        for (PupilResponse ll : responses(row.cell("light_L_L_direct"), light)) {
          for (PupilResponse lr : responses(row.cell("light_L_R_consensual"), light)) {
            for (PupilInequality unequal : inequalities(row.cell("anisocoria"))) {
              signs.add(signs(rr, lr, near(row.cell("near_response")), ll, rl, unequal, rapd(row)));
            }
          }
        }
      }
    }
    return signs;
  }

  private static List<PupilResponse> responses(String cell, String first) {
    return switch (cell) {
      case "yes" -> List.of(PupilResponse.BRISK);
      case "no" -> List.of(PupilResponse.ABSENT);
      case "reduced", "reduced (mechanical)" -> List.of(PupilResponse.SLUGGISH);
      case "slow/segmental" -> List.of(PupilResponse.SLUGGISH, PupilResponse.TONIC);
      case "no/minimal" -> List.of(PupilResponse.ABSENT, PupilResponse.SLUGGISH);
      case "reduced mildly if at all" -> List.of(PupilResponse.BRISK, PupilResponse.SLUGGISH);
      case "same", "" -> responses(first, first);
      default -> throw new AssertionError(cell);
    };
  }

  private static PupilResponse near(String cell) {
    if (cell.startsWith("yes") || cell.startsWith("brisk")) {
      return PupilResponse.BRISK;
    }
    return cell.startsWith("slow, tonic")
        ? PupilResponse.TONIC
        : cell.equals("reduced") ? PupilResponse.SLUGGISH : PupilResponse.ABSENT;
  }

  private static DefectSide rapd(CheckRow row) {
    String cell = row.cell("rapd");
    if (cell.startsWith("right")) {
      return DefectSide.RIGHT;
    }
    return cell.startsWith("LEFT") ? DefectSide.LEFT : DefectSide.NONE;
  }

  private static List<PupilInequality> inequalities(String cell) {
    List<PupilInequality> all = List.of(PupilInequality.values());
    return switch (cell) {
      case "NONE", "none; both large" -> List.of(PupilInequality.NONE);
      case "right larger, more in LIGHT" -> List.of(PupilInequality.RIGHT_LARGER_IN_LIGHT);
      case "right SMALLER, more in DARK, dilation lag" ->
          List.of(PupilInequality.LEFT_LARGER_IN_DARK);
      case "right larger, more in LIGHT (may be smaller when old)" ->
          all.stream()
              .filter(
                  one ->
                      one == PupilInequality.RIGHT_LARGER_IN_LIGHT
                          || one.larger().equals(Optional.of(Site.LEFT)))
              .toList();
      case "irregular", "small irregular, may be unequal" -> all;
      // Simple inequality is no less in the dark than in light (PupilX study).
      default ->
          all.stream().filter(one -> one.light() != PupilInequality.Light.MORE_IN_LIGHT).toList();
    };
  }

  private static PupilSigns signs(
      PupilResponse direct,
      PupilResponse consensual,
      PupilResponse near,
      PupilResponse leftDirect,
      PupilResponse leftConsensual,
      PupilInequality unequal,
      DefectSide afferent) {
    return new PupilSigns(
        new Pupil(Optional.of(direct), Optional.of(consensual), Optional.of(near)),
        new Pupil(
            Optional.of(leftDirect), Optional.of(leftConsensual), Optional.of(PupilResponse.BRISK)),
        Optional.of(unequal),
        Optional.of(afferent));
  }

  /** All signs with a brisk near response of the left pupil. */
  private static List<PupilSigns> allSigns() {
    List<PupilSigns> all = new ArrayList<>();
    for (PupilResponse direct : EXACT) {
      for (PupilResponse consensual : EXACT) {
        for (PupilResponse near : EXACT) {
          for (PupilResponse leftDirect : EXACT) {
            for (PupilResponse leftConsensual : EXACT) {
              addPairs(all, List.of(direct, consensual, near, leftDirect, leftConsensual));
            }
          }
        }
      }
    }
    return all;
  }

  private static void addPairs(List<PupilSigns> all, List<PupilResponse> five) {
    for (PupilInequality unequal : PupilInequality.values()) {
      for (DefectSide side : DefectSide.values()) {
        all.add(
            signs(five.get(0), five.get(1), five.get(2), five.get(3), five.get(4), unequal, side));
      }
    }
  }

  @Test
  void mirrorsItsAnswerWithItsSigns() {
    for (PupilSigns signs : allSigns()) {
      Set<PupilState> mirrored =
          PupilState.fitting(signs.mirrored()).all().stream()
              .map(PupilState::mirrored)
              .collect(Collectors.toSet());
      assertEquals(Set.copyOf(PupilState.fitting(signs).all()), mirrored, signs.toString());
    }
  }

  @Test
  void fitsNoMoreWhenMoreIsKnown() {
    for (PupilSigns signs : allSigns()) {
      Set<PupilState> known = Set.copyOf(PupilState.fitting(signs).all());
      for (PupilSigns less : withOneUnknown(signs)) {
        assertTrue(PupilState.fitting(less).all().containsAll(known), signs.toString());
      }
    }
  }

  private static List<PupilSigns> withOneUnknown(PupilSigns signs) {
    Pupil right = signs.right();
    Pupil noDirect = new Pupil(Optional.empty(), right.consensual(), right.near());
    Pupil noNear = new Pupil(right.direct(), right.consensual(), Optional.empty());
    return List.of(
        new PupilSigns(noDirect, signs.left(), signs.inequality(), signs.afferent()),
        new PupilSigns(noNear, signs.left(), signs.inequality(), signs.afferent()),
        new PupilSigns(right, signs.left(), Optional.empty(), signs.afferent()),
        new PupilSigns(right, signs.left(), signs.inequality(), Optional.empty()));
  }

  @Test
  void neverSaysThatAnOpticNerveLesionAloneMakesPupilsUnequal() {
    for (PupilSigns signs : allSigns()) {
      if (!signs.inequality().equals(Optional.of(PupilInequality.NONE))) {
        assertTrue(
            PupilState.fitting(signs).all().stream()
                .map(PupilState::cause)
                .noneMatch(
                    cause ->
                        cause == PupilCause.OPTIC_NERVE_COMPLETE
                            || cause == PupilCause.OPTIC_NERVE_PARTIAL
                            || cause == PupilCause.BOTH_OPTIC_NERVES_EQUALLY));
      }
    }
  }

  @Test
  void takesAPupilThatReactsForAnyThatAnswers() {
    for (PupilSigns signs : allSigns()) {
      if (!signs.right().direct().equals(Optional.of(PupilResponse.ABSENT))) {
        Set<PupilState> known = Set.copyOf(PupilState.fitting(signs).all());
        Pupil right = signs.right();
        Pupil reacts =
            new Pupil(Optional.of(PupilResponse.REACTIVE), right.consensual(), right.near());
        PupilSigns vague =
            new PupilSigns(reacts, signs.left(), signs.inequality(), signs.afferent());
        assertTrue(PupilState.fitting(vague).all().containsAll(known), signs.toString());
        assertTrue(
            PupilState.fitting(vague).all().stream()
                .noneMatch(state -> state.equals(right(PupilCause.OPTIC_NERVE_COMPLETE))));
      }
    }
  }

  @Test
  void leavesSimpleInequalityOpenBesideHorner() {
    PupilResponse brisk = PupilResponse.BRISK;
    PupilSigns signs =
        signs(
            brisk,
            brisk,
            brisk,
            brisk,
            brisk,
            PupilInequality.LEFT_LARGER_IN_DARK,
            DefectSide.NONE);
    Fit<PupilState> fit = PupilState.fitting(signs);
    assertInstanceOf(Fit.SeveralFit.class, fit);
    assertEquals(List.of(both(PupilCause.NO_LESION), right(PupilCause.HORNER)), fit.all());
  }

  @Test
  void fitsEverythingWhenNothingWasExamined() {
    PupilSigns none =
        new PupilSigns(Pupil.unexamined(), Pupil.unexamined(), Optional.empty(), Optional.empty());
    assertEquals(PupilState.all(), PupilState.fitting(none).all());
  }

  @Test
  void comparesThePupilsInLightAndDark() {
    assertEquals(
        Optional.of(PupilInequality.RIGHT_LARGER_IN_LIGHT), inequality("6", "3", "7", "6"));
    assertEquals(
        Optional.of(PupilInequality.LEFT_LARGER_IN_DARK), inequality("3", "3.5", "5", "7"));
    assertEquals(
        Optional.of(PupilInequality.RIGHT_LARGER_ALIKE), inequality("4", "3.5", "6", "5.5"));
    assertEquals(Optional.of(PupilInequality.NONE), inequality("3", "3.0", "5", "5"));
    assertEquals(Optional.of(PupilInequality.LEFT_LARGER_IN_DARK), inequality("3", "3", "5", "6"));
    assertEquals(Optional.empty(), inequality("3", "4", "6", "5"));
    assertFalse(Anisocoria.of(BigDecimal.ZERO, BigDecimal.ONE).isOk());
  }

  private static Optional<PupilInequality> inequality(
      String brightRight, String brightLeft, String dimRight, String dimLeft) {
    return Anisocoria.inLightAndDark(pair(brightRight, brightLeft), pair(dimRight, dimLeft))
        .value();
  }

  private static Anisocoria pair(String right, String left) {
    return Anisocoria.of(new BigDecimal(right), new BigDecimal(left)).orThrow();
  }

  @Test
  void tellsLightNearDissociation() {
    assertEquals(Optional.of(true), dissociation(PupilResponse.ABSENT, PupilResponse.BRISK));
    assertEquals(Optional.of(true), dissociation(PupilResponse.SLUGGISH, PupilResponse.BRISK));
    assertEquals(Optional.of(false), dissociation(PupilResponse.BRISK, PupilResponse.BRISK));
    assertEquals(Optional.of(false), dissociation(PupilResponse.ABSENT, PupilResponse.ABSENT));
    assertEquals(Optional.empty(), dissociation(PupilResponse.SLUGGISH, PupilResponse.TONIC));
    assertEquals(Optional.of(true), dissociation(PupilResponse.ABSENT, PupilResponse.REACTIVE));
    assertEquals(Optional.of(false), dissociation(PupilResponse.BRISK, PupilResponse.REACTIVE));
    assertEquals(Optional.empty(), dissociation(PupilResponse.REACTIVE, PupilResponse.BRISK));
  }

  private static Optional<Boolean> dissociation(PupilResponse light, PupilResponse near) {
    return LightNearDissociation.of(light, near).value();
  }
}
