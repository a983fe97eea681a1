package org.isopter.model.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;

/** What holds for the catalogue as a whole. */
class CatalogueTest {

  private static final Set<String> KEYS_OF_AN_ENTRY =
      Set.of("value", "absent", "method", "at", "device", "remarks");

  @Test
  void everyFindingCitesASource() {
    for (Finding<?> finding : Catalogue.standard().all()) {
      assertFalse(finding.citations().isEmpty(), finding.id());
    }
  }

  @Test
  void namesAreLowerCaseWithHyphens() {
    for (Finding<?> finding : Catalogue.standard().all()) {
      assertTrue(finding.id().matches("[a-z]+(-[a-z]+)*"), finding.id());
      parts(finding).forEach(p -> assertTrue(p.key().matches("[a-z]+(-[a-z]+)*"), p.key()));
    }
  }

  @Test
  void partsLeaveTheKeysOfAnEntryFree() {
    for (Finding<?> finding : Catalogue.standard().all()) {
      parts(finding).forEach(part -> assertFalse(KEYS_OF_AN_ENTRY.contains(part.key())));
    }
  }

  @Test
  void aPartKeyMeansTheSameEverywhere() {
    Map<String, Code> meanings = new HashMap<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (Part<?, ?> part : parts(finding)) {
        Code other = meanings.putIfAbsent(part.key(), part.code());
        assertTrue(other == null || other.equals(part.code()), part.key() + " in " + finding);
      }
    }
  }

  @Test
  void aListOfAnswersIsTheSameEverywhere() {
    Map<String, Answers> lists = new HashMap<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (Part<?, ?> part : parts(finding)) {
        if (part.spec() instanceof Spec.Coded coded) {
          Answers other = lists.putIfAbsent(coded.answers().id(), coded.answers());
          assertTrue(other == null || other.equals(coded.answers()), coded.answers().id());
        }
      }
    }
  }

  @Test
  void everyCodeLeadsBackToItsFinding() {
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (Code code : finding.codes().all()) {
        assertEquals(
            finding, Catalogue.standard().byCode(code.system(), code.code()).orElseThrow());
      }
    }
  }

  @Test
  void neverSaysThatAnAfferentDefectIsInBothEyes() {
    assertEquals(Site.PAIR, Pupils.AFFERENT_DEFECT.sites());
    assertEquals(
        Set.of("none", "right", "left", "equivocal"),
        Set.copyOf(java.util.Arrays.stream(DefectSide.values()).map(DefectSide::word).toList()));
  }

  @Test
  void refusesTwoFindingsThatShareACodeOrAName() {
    Finding<?> other =
        Finding.of("other-pressure", "Other")
            .code(Code.snomed("41633001", "x"))
            .value(Shapes.truth())
            .build();
    assertThrows(IllegalArgumentException.class, () -> Catalogue.standard().plus(other));
    assertThrows(
        IllegalArgumentException.class, () -> Catalogue.of(List.of(Pupils.SIZE, Pupils.SIZE)));
  }

  private static List<Part<?, ?>> parts(Finding<?> finding) {
    return finding.layout().variants().stream()
        .<Part<?, ?>>flatMap(variant -> variant.parts().stream())
        .toList();
  }
}
