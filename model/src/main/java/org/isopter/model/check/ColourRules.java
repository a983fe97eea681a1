package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;
import static org.isopter.model.check.ConsistencyRule.incomplete;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Colours.Plates;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.clinical.colour.PlateEdition;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/** Rules about colour plates and the comparison of red. */
final class ColourRules {

  private static final String PLATES =
      "scored plates of 14, 24 and 38: FAA guide item 52; makers' sheet from memory";
  private static final BigDecimal FULL = BigDecimal.valueOf(100);
  private static final BigDecimal CLEARLY_LESS = BigDecimal.valueOf(75);

  private ColourRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        shownBeyondEdition(),
        shownBeyondScored(),
        editionMissing(),
        platesWithoutControl(),
        redWithoutReference(),
        redOfOneEye(),
        redAgainstDefect(),
        handButPlates());
  }

  private static ConsistencyRule shownBeyondEdition() {
    return impossible("plates-beyond-edition")
        .what("More plates were shown than the edition has.")
        .why("A plate is shown once.")
        .on(Colours.PLATES)
        .wanted("at most as many plates as the edition has")
        .suggest("correct the score or the edition")
        .everywhere(
            eye ->
                eye.seen(Colours.PLATES, ColourRules::isBeyondEdition)
                    .map(seen -> Breach.of(seen).in("edition")));
  }

  private static boolean isBeyondEdition(Plates plates) {
    return plates.edition().filter(all -> plates.shown() > all).isPresent();
  }

  private static ConsistencyRule shownBeyondScored() {
    return contradictory("plates-beyond-scored", Severity.WARNING)
        .what("More Ishihara plates were counted than the edition has with numbers.")
        .why("The last plates of each edition are for those who do not read numbers.")
        .source(PLATES)
        .on(Colours.PLATES)
        .wanted("at most 11 plates of edition 14, 17 of edition 24, 25 of edition 38")
        .suggest("count the scored plates only, or correct the edition")
        .everywhere(eye -> eye.seen(Colours.PLATES, ColourRules::isBeyondScored).map(Breach::of));
  }

  private static boolean isBeyondScored(Plates plates) {
    return plates.test() == ColourTest.ISHIHARA
        && !isBeyondEdition(plates)
        && plates
            .edition()
            .flatMap(PlateEdition::of)
            .filter(edition -> plates.shown() > numbered(edition))
            .isPresent();
  }

  /** The plates with numbers: after those that are scored two, or four, tell the kinds apart. */
  private static int numbered(PlateEdition edition) {
    return switch (edition) {
      case PLATES_14 -> edition.scored();
      case PLATES_24 -> edition.scored() + 2;
      case PLATES_38 -> edition.scored() + 4;
    };
  }

  private static ConsistencyRule editionMissing() {
    return incomplete("plates-edition-missing", Severity.INFORMATION)
        .what("Ishihara plates are stated without the edition.")
        .why("What score is normal depends on the edition.")
        .source(PLATES)
        .on(Colours.PLATES)
        .wanted("edition: 14, 24 or 38")
        .suggest("the number of plates stands on the title page")
        .everywhere(
            eye ->
                eye.seen(
                        Colours.PLATES,
                        one -> one.test() == ColourTest.ISHIHARA && one.edition().isEmpty())
                    .map(Breach::of));
  }

  private static ConsistencyRule platesWithoutControl() {
    return implausible("plates-without-control", Severity.INFORMATION)
        .what("The plate that everybody reads was not read, and the others were scored.")
        .why("Who does not read it does not see the plates, or does not take part in the test.")
        .on(Colours.PLATES)
        .wanted("the control plate as read, or why the test could not be done")
        .settledByRemark()
        .suggest("show the first plate again, with the reading correction worn")
        .everywhere(
            eye ->
                eye.seen(Colours.PLATES, plates -> plates.control().equals(Optional.of(false)))
                    .map(seen -> Breach.of(seen).in("control-plate")));
  }

  private static ConsistencyRule redWithoutReference() {
    return implausible("red-without-reference", Severity.INFORMATION)
        .what("Both eyes see less than 100 % of red.")
        .why(
            "The percentage compares the worse eye with the better one, which is 100 %; both may be"
                + " compared with what the person remembers.")
        .on(Colours.RED_SATURATION)
        .wanted("100 % in the better eye")
        .settledByRemark()
        .suggest("set the better eye to 100 % and the other in proportion, asking again")
        .pair(
            both ->
                both.at(Site.RIGHT)
                    .seen(Colours.RED_SATURATION, ColourRules::isLess)
                    .flatMap(
                        right ->
                            both
                                .at(Site.LEFT)
                                .beside(right, Colours.RED_SATURATION, ColourRules::isLess)
                                .map(left -> Breach.of(right, left))
                                .stream()));
  }

  private static boolean isLess(Quantity red) {
    return red.value().compareTo(FULL) < 0;
  }

  private static ConsistencyRule redOfOneEye() {
    return incomplete("red-of-one-eye", Severity.INFORMATION)
        .what("Red saturation below 100 % is stated for one eye and nothing for its fellow.")
        .why("It is a comparison, and a reader cannot tell which eye was the better.")
        .on(Colours.RED_SATURATION)
        .wanted("the fellow eye at 100 %, or why it was not compared")
        .suggest("add the fellow eye")
        .eachEye(
            eye ->
                eye.seen(Colours.RED_SATURATION, ColourRules::isLess)
                    .filter(red -> eye.fellow().isSilentOn(Colours.RED_SATURATION))
                    .map(Breach::of));
  }

  private static ConsistencyRule redAgainstDefect() {
    return implausible("red-against-defect", Severity.INFORMATION)
        .what("Red is paler to one eye by a quarter or more, and the defect is in the other.")
        .why("A nerve that carries less light mostly carries less red; the macula may differ.")
        .source("Mikolajczyk et al: healthy people report differences of 9 % on average")
        .on(Colours.RED_SATURATION, Pupils.AFFERENT_DEFECT)
        .wanted("less red in the eye of the defect")
        .settledByRemark()
        .suggest("check the sides of both")
        .eachEye(
            eye ->
                eye.seen(Colours.RED_SATURATION, red -> red.value().compareTo(CLEARLY_LESS) <= 0)
                    .flatMap(
                        red ->
                            eye
                                .at(Site.BOTH)
                                .beside(
                                    red,
                                    Pupils.AFFERENT_DEFECT,
                                    defect -> defect.side() == Reflexes.side(eye.fellow()))
                                .map(defect -> Breach.of(red, defect))
                                .stream()));
  }

  private static ConsistencyRule handButPlates() {
    return implausible("hand-movements-but-plates", Severity.WARNING)
        .what("An eye that sees no more than a moving hand or a light reads colour plates.")
        .why("The figures of the plates need about 6/60.")
        .on(Colours.PLATES, Acuities.DISTANCE)
        .wanted("no plate read, or a better acuity")
        .suggest("check which eye was meant, and whether the acuity was taken with correction")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Colours.PLATES,
                    plates -> plates.correct() > 1,
                    Acuities.DISTANCE,
                    Sight::isHandOrLight));
  }
}
