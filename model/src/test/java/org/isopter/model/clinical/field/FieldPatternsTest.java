package org.isopter.model.clinical.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.statement.Fit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class FieldPatternsTest {

  /** The parts of the pathway that each row's words name. */
  private static final Map<String, Set<Pathway>> NAMED =
      Map.ofEntries(
          Map.entry("normal", Set.of()),
          Map.entry("RE central scotoma", Set.of(Pathway.RETINA, Pathway.OPTIC_NERVE)),
          Map.entry("RE superior altitudinal", Set.of(Pathway.RETINA, Pathway.OPTIC_NERVE)),
          Map.entry(
              "RE temporal hemianopia only",
              // Beside what the row prints: the retina, and a chiasm that shows on one side first.
              Set.of(
                  Pathway.OPTIC_NERVE_NEAR_CHIASM,
                  Pathway.CHIASM,
                  Pathway.RETINA,
                  Pathway.NOT_ORGANIC)),
          Map.entry(
              "RE central + LE superotemporal",
              // Beside what the row prints: a disease of each eye, common practice, no source.
              Set.of(Pathway.JUNCTION, Pathway.RETINA, Pathway.OPTIC_NERVE)),
          // Beside what the rows print: both discs, Sowka and Luong, Optometry 2009;80:232, and
          // both
          // retinas, Schaefer, EyeNet, November 2017.
          Map.entry("bitemporal", Set.of(Pathway.CHIASM, Pathway.RETINA, Pathway.OPTIC_NERVE)),
          Map.entry(
              "bitemporal superior",
              Set.of(Pathway.CHIASM_FROM_BELOW, Pathway.RETINA, Pathway.OPTIC_NERVE)),
          Map.entry(
              "bitemporal inferior",
              Set.of(Pathway.CHIASM_FROM_ABOVE, Pathway.RETINA, Pathway.OPTIC_NERVE)),
          Map.entry(
              "binasal",
              Set.of(Pathway.RETINA, Pathway.OPTIC_NERVE, Pathway.CHIASM_FROM_THE_SIDES)),
          Map.entry(
              "left homonymous hemianopia, incongruous, RAPD left, bow-tie atrophy",
              Set.of(Pathway.OPTIC_TRACT)),
          Map.entry("left homonymous hemianopia, complete", Set.of(Pathway.RETROCHIASMAL)),
          Map.entry("left homonymous sectoranopia", Set.of(Pathway.LATERAL_GENICULATE)),
          Map.entry(
              "left homonymous hemianopia, incongruous, no RAPD",
              // Beside what the row prints: Kedar 2007, AJO 143:772, one in five is occipital.
              Set.of(
                  Pathway.LATERAL_GENICULATE,
                  Pathway.ANTERIOR_RADIATION,
                  Pathway.OCCIPITAL_CORTEX)),
          Map.entry(
              "left superior homonymous quadrantanopia",
              Set.of(Pathway.TEMPORAL_RADIATION, Pathway.LOWER_CALCARINE_BANK)),
          Map.entry(
              "left inferior homonymous quadrantanopia",
              Set.of(Pathway.PARIETAL_RADIATION, Pathway.UPPER_CALCARINE_BANK)),
          Map.entry(
              "left homonymous hemianopia, congruous, macular sparing",
              Set.of(Pathway.OCCIPITAL_CORTEX)),
          Map.entry(
              "left homonymous with spared temporal crescent of LE",
              Set.of(Pathway.OCCIPITAL_CORTEX_BEHIND)),
          Map.entry(
              "bilateral constriction",
              // Beside what the row prints: both occipital lobes, AJNR 2007;28:3 Table 1, and
              // clouded
              // media, common practice, no source.
              Set.of(
                  Pathway.RETINA,
                  Pathway.OPTIC_NERVE,
                  Pathway.OCCIPITAL_CORTEX,
                  Pathway.NOT_ORGANIC)),
          Map.entry(
              "RE no field",
              // Beside what the row prints: clouded media, common practice, no source.
              Set.of(Pathway.RETINA, Pathway.OPTIC_NERVE, Pathway.MEDIA)));

  static Stream<CheckRow> rows() {
    return CheckTable.FIELD_PATTERNS.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void findsThePlacesOfTheRowAndNoOthers(CheckRow row) {
    List<PathwayPlace> places = FieldPlaces.of(signs(row)).places().all();
    Set<Pathway> parts = places.stream().map(PathwayPlace::part).collect(Collectors.toSet());
    assertEquals(NAMED.get(row.name()), parts);
    assertTrue(places.stream().allMatch(place -> isOnSide(row, place)), places.toString());
  }

  private static boolean isOnSide(CheckRow row, PathwayPlace place) {
    String side = place.side().name().toLowerCase(Locale.ROOT);
    // The other reading of these rows, a disease of both eyes, has no side in the table.
    boolean second =
        (row.name().startsWith("bitemporal") || row.name().startsWith("RE central +"))
            && (place.part() == Pathway.RETINA || place.part() == Pathway.OPTIC_NERVE);
    boolean middle =
        row.name().equals("RE temporal hemianopia only") && place.part() == Pathway.CHIASM;
    return second || middle || side.equals(row.cell("lesion_side"));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void neverSaysWhatTheRowForbids(CheckRow row) {
    String text = FieldPlaces.of(signs(row)).places().statement().text().toLowerCase(Locale.ROOT);
    switch (row.cell("must_not_say")) {
      case "" -> assertFalse(text.contains("pituitary"), text);
      case "not a quadrantanopia of one eye from brain disease" ->
          assertSaysNoneOf(text, "quadrantanopia", "brain", "radiation", "cortex", "tract");
      case "must respect the vertical meridian before calling it chiasmal" -> {
        assertTrue(text.contains("vertical meridian"), text);
        FieldSigns crossing = signs(row).with(FieldDetails.none().vertical(false));
        assertSaysNoneOf(placesOf(crossing), "chiasm");
      }
      case "NOT optic radiation, NOT a single occipital lesion, NOT \"pituitary\"" ->
          assertSaysNoneOf(text, "radiation", "occipital", "pituitary", "cortex");
      case "do not name a lobe from a complete hemianopia alone" ->
          assertSaysNoneOf(text, "occipital", "temporal", "parietal", "lobe");
      case "a blind eye is not a hemianopia" -> assertSaysNoneOf(text, "hemianopia", "homonymous");
      default -> throw new AssertionError(row.cell("must_not_say"));
    }
  }

  private static String placesOf(FieldSigns signs) {
    return FieldPlaces.of(signs).places().all().toString();
  }

  private static void assertSaysNoneOf(String text, String... words) {
    for (String word : words) {
      assertFalse(text.contains(word), text);
    }
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithTheCongruityAndSparingThatTheRowPrints(CheckRow row) {
    Fit<PathwayPlace> alone = FieldPlaces.of(signs(row)).places();
    String congruity = row.cell("congruity");
    if (congruity.equals("congruous") || congruity.equals("incongruous")) {
      FieldDetails known = signs(row).details().congruous(congruity.equals("congruous"));
      assertEquals(alone.all(), FieldPlaces.of(signs(row).with(known)).places().all());
    }
    if (row.cell("macular_sparing").equals("no")) {
      FieldDetails spared = signs(row).details().macularSparing(true);
      List<PathwayPlace> places = FieldPlaces.of(signs(row).with(spared)).places().all();
      assertTrue(
          places.stream().allMatch(place -> place.part().isWithin(Pathway.OCCIPITAL_CORTEX)),
          places.toString());
    }
  }

  private static FieldSigns signs(CheckRow row) {
    FieldSigns signs =
        FieldSigns.of(
            eye(row, row.cell("RE_defect_ST_SN_IT_IN"), "0101"),
            eye(row, row.cell("LE_defect_ST_SN_IT_IN"), "1010"));
    FieldSigns shaped = row.name().contains("sectoranopia") ? signs.asSector() : signs;
    return shaped.with(details(row.name()));
  }

  private static EyeField eye(CheckRow row, String cell, String half) {
    return switch (cell) {
      case "central" -> eye("0000", Optional.of(FieldResponse.ABSENT));
      case "all" -> eye("1111", Optional.of(FieldResponse.ABSENT));
      case "ring" -> eye("1111", Optional.of(FieldResponse.FULL));
      case "sector" -> eye(half, Optional.empty());
      case "1010 minus crescent" -> eye("1010", Optional.empty());
      default -> {
        assertTrue(cell.matches("[01]{4}"), row.toString());
        yield eye(cell, Optional.empty());
      }
    };
  }

  private static EyeField eye(String bits, Optional<FieldResponse> centre) {
    return new EyeField(bit(bits, 0), bit(bits, 1), bit(bits, 2), bit(bits, 3), centre);
  }

  private static FieldResponse bit(String bits, int index) {
    return bits.charAt(index) == '1' ? FieldResponse.ABSENT : FieldResponse.FULL;
  }

  private static FieldDetails details(String name) {
    FieldDetails details = FieldDetails.none();
    if (name.contains("RAPD left")) {
      details = details.afferent(DefectSide.LEFT);
    }
    if (name.contains("no RAPD")) {
      details = details.afferent(DefectSide.NONE);
    }
    if (name.contains("congruous")) {
      details = details.congruous(!name.contains("incongruous"));
    }
    if (name.contains("macular sparing")) {
      details = details.macularSparing(true);
    }
    return name.contains("spared temporal crescent") ? details.crescentSpared(true) : details;
  }
}
