package org.isopter.model.clinical.pupil;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of causes: what its rows allow, and laws over all combinations of the main signs. */
public class PupilCausesTest {

  private static final Map<String, PupilCause> ROWS =
      Map.ofEntries(
          Map.entry("normal", PupilCauses.of("no-lesion", Site.BOTH)),
          right("right optic nerve, complete", "optic-nerve"),
          right("right optic nerve, partial", "optic-nerve"),
          Map.entry("both optic nerves, equal", PupilCauses.of("both-nerves", Site.BOTH)),
          right("right third nerve with pupil", "third-nerve"),
          right("right pharmacological mydriasis", "widened"),
          right("right tonic (Adie)", "tonic"),
          right("right Horner", "horner"),
          right("right optic tract", "optic-tract"),
          right("right pretectal/brachium", "pretectum"),
          Map.entry("dorsal midbrain", PupilCauses.of("dorsal-midbrain", Site.BOTH)),
          Map.entry("Argyll Robertson", PupilCauses.of("argyll-robertson", Site.BOTH)),
          right("right optic nerve + right fixed pupil", "nerve-and-pupil"),
          right("right traumatic iris / posterior synechiae", "iris-acute"));

  private static Map.Entry<String, PupilCause> right(String name, String row) {
    return Map.entry(name, PupilCauses.of(row, Site.RIGHT));
  }

  static Stream<CheckRow> rows() {
    return CheckTable.PUPIL_TRUTH_TABLE.rows();
  }

  /** A row may allow more than the table prints, for a block is a degree; never less. */
  @ParameterizedTest
  @MethodSource("rows")
  void allowsWhatItsRowPrints(CheckRow row) {
    PupilCause cause = ROWS.get(row.name());
    for (PupilSigns signs : printed(row)) {
      assertEquals(List.of(), cause.against(signs), signs.toString());
    }
  }

  private static Set<PupilSigns> printed(CheckRow row) {
    Set<PupilSigns> all = new HashSet<>();
    for (String one : words(row.cell("light_R_R_direct"))) {
      for (String two : words(row.cell("light_L_L_direct"))) {
        PupilSigns signs = PupilSigns.none();
        boolean same = row.cell("light_L_L_direct").equals("same") || one.isEmpty();
        signs = put(signs, PupilSign.DIRECT, Site.RIGHT, one);
        signs = put(signs, PupilSign.DIRECT, Site.LEFT, same ? one : two);
        signs = put(signs, PupilSign.NEAR, Site.RIGHT, near(row.cell("near_response")));
        for (String unequal : unequal(row.cell("anisocoria"))) {
          all.add(
              put(
                  put(signs, PupilSign.UNEQUAL, Site.BOTH, unequal),
                  PupilSign.AFFERENT,
                  Site.BOTH,
                  afferent(row.cell("rapd"))));
        }
      }
    }
    assertFalse(all.isEmpty());
    return all;
  }

  private static PupilSigns put(PupilSigns signs, PupilSign sign, Site site, String word) {
    return word.isEmpty() ? signs : signs.with(sign, site, sign + " " + word, Set.of(word));
  }

  private static List<String> words(String cell) {
    return switch (cell) {
      case "yes" -> List.of("brisk");
      case "no" -> List.of("absent");
      case "reduced", "reduced (mechanical)" -> List.of("sluggish");
      case "slow/segmental" -> List.of("sluggish", "tonic");
      case "no/minimal" -> List.of("absent", "sluggish");
      case "reduced mildly if at all" -> List.of("brisk", "sluggish");
      case "same", "" -> List.of("");
      default -> throw new AssertionError(cell);
    };
  }

  private static String near(String cell) {
    if (cell.startsWith("yes") || cell.startsWith("brisk")) {
      return "brisk";
    }
    return cell.startsWith("slow, tonic")
        ? "tonic"
        : cell.equals("reduced") ? "sluggish" : "absent";
  }

  private static String afferent(String cell) {
    return cell.startsWith("right") ? "right" : cell.startsWith("LEFT") ? "left" : "none";
  }

  private static List<String> unequal(String cell) {
    return switch (cell) {
      case "NONE", "none; both large" -> List.of("none");
      case "right larger, more in LIGHT" -> List.of("right-light");
      case "right SMALLER, more in DARK, dilation lag" -> List.of("left-dark");
      case "right larger, more in LIGHT (may be smaller when old)" ->
          List.of("right-light", "left-light", "left-dark", "left-alike");
      case "irregular", "small irregular, may be unequal" -> List.copyOf(PupilSign.UNEQUAL.words());
      default -> List.of("none", "right-dark", "right-alike", "left-dark", "left-alike");
    };
  }

  /** Goes through every combination of the signs at the heart of the table, each known or not. */
  public static void everyCombination(Consumer<PupilSigns> each) {
    combine(PupilSigns.none(), MAIN, each);
    combine(PupilSigns.none(), BESIDE, each);
  }

  private static final List<PupilSigns.Key> MAIN =
      List.of(
          new PupilSigns.Key(PupilSign.DIRECT, Site.RIGHT),
          new PupilSigns.Key(PupilSign.NEAR, Site.RIGHT),
          new PupilSigns.Key(PupilSign.DIRECT, Site.LEFT),
          new PupilSigns.Key(PupilSign.UNEQUAL, Site.BOTH),
          new PupilSigns.Key(PupilSign.AFFERENT, Site.BOTH),
          new PupilSigns.Key(PupilSign.LID, Site.RIGHT));

  private static final List<PupilSigns.Key> BESIDE =
      List.of(
          new PupilSigns.Key(PupilSign.DIRECT, Site.RIGHT),
          new PupilSigns.Key(PupilSign.UNEQUAL, Site.BOTH),
          new PupilSigns.Key(PupilSign.PRESSURE, Site.RIGHT),
          new PupilSigns.Key(PupilSign.OUTLINE, Site.RIGHT),
          new PupilSigns.Key(PupilSign.MOVEMENT, Site.LEFT),
          new PupilSigns.Key(PupilSign.FRONT, Site.LEFT));

  private static final List<PupilSigns.Key> FURTHER =
      Stream.of(PupilSign.values())
          .flatMap(
              sign ->
                  sign.isOfThePair()
                      ? Stream.of(new PupilSigns.Key(sign, Site.BOTH))
                      : Site.EACH_EYE.stream().map(eye -> new PupilSigns.Key(sign, eye)))
          .toList();

  /** What the table makes of every combination, read for all laws at once. */
  private static final Map<PupilSigns, PupilReading> READINGS = readings();

  private static Map<PupilSigns, PupilReading> readings() {
    Map<PupilSigns, PupilReading> all = new LinkedHashMap<>();
    everyCombination(signs -> all.put(signs, PupilReading.of(signs)));
    return all;
  }

  private static void combine(
      PupilSigns signs, List<PupilSigns.Key> keys, Consumer<PupilSigns> each) {
    if (keys.isEmpty()) {
      each.accept(signs);
      return;
    }
    PupilSigns.Key key = keys.get(0);
    List<PupilSigns.Key> rest = keys.subList(1, keys.size());
    combine(signs, rest, each);
    for (String word : key.sign().words()) {
      combine(put(signs, key.sign(), key.site(), word), rest, each);
    }
  }

  @Test
  void namesNoListOfHarmlessRowsAlone() {
    READINGS.forEach(
        (signs, reading) -> {
          boolean harmless =
              !reading.fitting().isEmpty()
                  && reading.fitting().stream().noneMatch(PupilCause::grave);
          boolean named = reading.statement().text().contains("What fits");
          assertFalse(harmless && named, reading.toString());
          if (harmless) {
            assertEquals(Certainty.CANNOT_TELL, reading.statement().certainty());
          }
        });
  }

  @Test
  void putsGraveRowsFirst() {
    READINGS.forEach(
        (signs, reading) -> {
          List<Boolean> grave = reading.fitting().stream().map(PupilCause::grave).toList();
          int mild = grave.indexOf(false);
          assertTrue(mild < 0 || !grave.subList(mild, grave.size()).contains(true));
        });
  }

  @Test
  void mirrorsItsAnswerWithItsSigns() {
    Map<PupilCause, PupilCause> mirror =
        PupilCauses.all().stream()
            .collect(
                Collectors.toMap(row -> row, row -> PupilCauses.of(row.id(), row.side().fellow())));
    sample(1500)
        .forEach(
            signs ->
                assertEquals(
                    Set.copyOf(READINGS.get(signs).fitting()),
                    PupilReading.of(signs.mirrored()).fitting().stream()
                        .map(mirror::get)
                        .collect(Collectors.toSet())));
  }

  private static List<PupilSigns> sample(int size) {
    List<PupilSigns> all = new ArrayList<>(READINGS.keySet());
    Collections.shuffle(all, new Random(20261127));
    return all.subList(0, size);
  }

  /** Whatever sign is added, what is opposed to a row that fitted makes nothing surer. */
  @Test
  void addsNoCertaintyWithAFactAgainstARow() {
    for (PupilSigns signs : sample(600)) {
      if (!signs.unusual().isEmpty()) {
        PupilReading before = READINGS.get(signs);
        for (PupilSigns.Key key : FURTHER) {
          if (signs.seen(key).isEmpty()) {
            key.sign().words().forEach(word -> holdsWith(signs, before, key, word));
          }
        }
      }
    }
  }

  private static void holdsWith(
      PupilSigns signs, PupilReading before, PupilSigns.Key key, String word) {
    boolean against = before.fitting().stream().anyMatch(row -> !row.allows(key).contains(word));
    if (against && before.statement().certainty() != Certainty.ONE_FITS) {
      PupilReading after = PupilReading.of(put(signs, key.sign(), key.site(), word));
      assertNotEquals(
          Certainty.ONE_FITS,
          after.statement().certainty(),
          () -> before + " with " + key + " " + word + ": " + after);
    }
  }

  @Test
  void excludesNothingPartialByABriskResponse() {
    PupilSigns defect = put(PupilSigns.none(), PupilSign.AFFERENT, Site.BOTH, "right");
    for (Site eye : Site.EACH_EYE) {
      PupilSigns brisk = put(defect, PupilSign.DIRECT, eye, "brisk");
      Set<PupilCause> rows = Set.copyOf(PupilReading.of(brisk).fitting());
      assertTrue(rows.contains(PupilCauses.of("optic-nerve", Site.RIGHT)));
      assertTrue(rows.contains(PupilCauses.of("retina", Site.RIGHT)));
    }
  }

  @Test
  void namesTheRetinaWhereverItNamesTheNerve() {
    READINGS.forEach(
        (signs, reading) -> {
          Set<String> rows = names(reading);
          for (String side : List.of("RIGHT", "LEFT")) {
            assertEquals(
                rows.contains("optic-nerve " + side),
                rows.contains("retina " + side),
                rows::toString);
          }
          assertEquals(rows.contains("both-nerves BOTH"), rows.contains("both-retinas BOTH"));
        });
  }

  private static Set<String> names(PupilReading reading) {
    return reading.fitting().stream()
        .map(row -> row.id() + " " + row.side().name())
        .collect(Collectors.toSet());
  }

  @Test
  void neverExplainsUnequalPupilsByANerveAlone() {
    PupilSigns.Key key = new PupilSigns.Key(PupilSign.UNEQUAL, Site.BOTH);
    READINGS.forEach(
        (signs, reading) -> {
          boolean unequal =
              signs.seen(key).filter(seen -> !seen.words().contains("none")).isPresent();
          assertFalse(unequal && names(reading).stream().anyMatch(AFFERENT_ROWS::contains));
        });
  }

  private static final Set<String> AFFERENT_ROWS =
      Set.of(
          "optic-nerve RIGHT",
          "optic-nerve LEFT",
          "nerves-unlike RIGHT",
          "nerves-unlike LEFT",
          "both-nerves BOTH");

  @Test
  void namesWhatWasNotRecordedAndWouldTell() {
    PupilSigns signs = put(PupilSigns.none(), PupilSign.DIRECT, Site.RIGHT, "sluggish");
    List<PupilSign> missing = PupilReading.of(signs).missing();
    assertTrue(missing.containsAll(List.of(PupilSign.NEAR, PupilSign.LID, PupilSign.PRESSURE)));
    assertFalse(missing.contains(PupilSign.LIT));
    assertFalse(missing.contains(PupilSign.COCAINE));
  }

  @Test
  void takesNoWordThatASignDoesNotHave() {
    assertThrows(
        IllegalArgumentException.class,
        () -> PupilSigns.none().with(PupilSign.LID, Site.LEFT, "lid", Set.of("brisk")));
    assertThrows(IllegalArgumentException.class, () -> PupilCauses.of("no-such-row", Site.LEFT));
  }

  @Test
  void comparesThePupilsInLightAndDark() {
    assertEquals(
        Optional.of(PupilInequality.RIGHT_LARGER_IN_LIGHT), inequality("6", "3", "7", "6"));
    assertEquals(
        Optional.of(PupilInequality.LEFT_LARGER_IN_DARK), inequality("3", "3.5", "5", "7"));
    assertEquals(
        Optional.of(PupilInequality.RIGHT_LARGER_ALIKE), inequality("4", "3.5", "6", "5.5"));
    // PupilX study: what is measured twice may differ by 0.2 mm.
    assertEquals(
        Optional.of(PupilInequality.RIGHT_LARGER_ALIKE), inequality("4", "3.5", "6.2", "5.5"));
    assertNotEquals(
        Optional.of(PupilInequality.RIGHT_LARGER_ALIKE), inequality("4", "3.5", "6.3", "5.5"));
    assertEquals(Optional.of(PupilInequality.NONE), inequality("3", "3.0", "5", "5"));
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
}
