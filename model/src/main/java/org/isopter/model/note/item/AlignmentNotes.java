package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.movement.Alignment;
import org.isopter.model.answer.movement.CoverMethod;
import org.isopter.model.answer.movement.FixationDistance;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Control;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Vocabulary;
import org.isopter.model.note.token.Words;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** The position of the eyes to each other on covering one, and how far they stand forward. */
final class AlignmentNotes {

  private record Stand(Alignment alignment, Optional<Control> control) {
    static Stand of(Alignment alignment, Control control) {
      return new Stand(alignment, Optional.of(control));
    }

    static Stand plain(Alignment alignment) {
      return new Stand(alignment, Optional.empty());
    }
  }

  private static final Vocabulary<Stand> STANDS =
      Vocabulary.<Stand>empty()
          .say(Stand.plain(Alignment.STRAIGHT), "straight", "orthotropic", "ortho", "orthophoric")
          .say(Stand.plain(Alignment.ESO), "eso")
          .say(Stand.plain(Alignment.EXO), "exo")
          .say(Stand.plain(Alignment.RIGHT_HYPER), "right hyper", "R hyper")
          .say(Stand.plain(Alignment.LEFT_HYPER), "left hyper", "L hyper")
          .say(Stand.of(Alignment.ESO, Control.MANIFEST), "eso manifest", "ET", "esotropia")
          .say(Stand.of(Alignment.EXO, Control.MANIFEST), "exo manifest", "XT", "exotropia")
          .say(
              Stand.of(Alignment.RIGHT_HYPER, Control.MANIFEST),
              "right hyper manifest",
              "RHT",
              "right hypertropia",
              "R hypertropia")
          .say(
              Stand.of(Alignment.LEFT_HYPER, Control.MANIFEST),
              "left hyper manifest",
              "LHT",
              "left hypertropia",
              "L hypertropia")
          .say(Stand.of(Alignment.ESO, Control.LATENT), "eso latent", "esophoria", "SOP")
          .say(Stand.of(Alignment.EXO, Control.LATENT), "exo latent", "exophoria", "XOP")
          .say(
              Stand.of(Alignment.RIGHT_HYPER, Control.LATENT),
              "right hyper latent",
              "right hyperphoria",
              "R hyperphoria")
          .say(
              Stand.of(Alignment.LEFT_HYPER, Control.LATENT),
              "left hyper latent",
              "left hyperphoria",
              "L hyperphoria")
          .say(
              Stand.of(Alignment.ESO, Control.INTERMITTENT),
              "eso intermittent",
              "E(T)",
              "intermittent esotropia",
              "intermittent ET")
          .say(
              Stand.of(Alignment.EXO, Control.INTERMITTENT),
              "exo intermittent",
              "X(T)",
              "intermittent exotropia",
              "intermittent XT")
          .say(Stand.of(Alignment.RIGHT_HYPER, Control.INTERMITTENT), "right hyper intermittent")
          .say(Stand.of(Alignment.LEFT_HYPER, Control.INTERMITTENT), "left hyper intermittent");

  private static final Vocabulary<FixationDistance> FIXATIONS =
      Vocabulary.of(FixationDistance.class)
          .say(FixationDistance.FAR, "distance", "at distance", "dist", "D", "in the distance")
          .say(FixationDistance.NEAR, "at near", "N");

  private static final Vocabulary<CoverMethod> METHODS =
      Vocabulary.of(CoverMethod.class)
          .say(CoverMethod.ALTERNATE_COVER, "PCT", "APCT", "ACT", "prism cover test")
          .say(CoverMethod.ALTERNATE_COVER, "by PCT", "alternate cover test", "by APCT")
          .say(CoverMethod.COVER_UNCOVER, "cover uncover test", "cover/uncover")
          .say(CoverMethod.CORNEAL_REFLEXES, "by Hirschberg", "Hirschberg");

  private static final Slot<Stand> STAND = Slot.value("deviation", STANDS);
  private static final Slot<Quantity> AMOUNT = Slot.value("amount", AlignmentNotes::amount);
  private static final Slot<FixationDistance> FIXATION = Slot.values("fixation", FIXATIONS);
  private static final Slot<CoverMethod> METHOD = Slot.condition("technique", METHODS);
  private static final Slot<Quantity> LENGTH = Slot.value("length in mm", Common.MILLIMETRES);

  private static final Slot<Quantity> BASE =
      Slot.condition(
          "distance of the rims",
          cursor -> cursor.take("base") ? Common.MILLIMETRES.read(cursor) : Optional.empty());

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("deviation of the eyes", "deviation eso 25 PD far")
              .sides(Grammar.Sides.PAIR)
              .startsWith("deviation", "CT", "cover test")
              .startsWith(STANDS.words().stream().map(Heading::of).map(Heading::keptAsWord))
              .startsWith(METHODS.words().stream().map(Heading::of).map(Heading::keptAsWord))
              .slots(STAND, AMOUNT, FIXATION)
              .method(METHOD)
              .whole(Alignments.DEVIATION)
              .build(AlignmentNotes::deviation),
          Grammar.of("exophthalmometry", "Hertel R 16 mm L 18 mm base 98 mm")
              .startsWith("Hertel", "exophthalmometry")
              .slots(LENGTH, BASE)
              .whole(Alignments.PROTRUSION)
              .build(
                  eye ->
                      eye.found(
                          Alignments.PROTRUSION,
                          new Alignments.Protrusion(eye.get(LENGTH), eye.find(BASE)))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Alignments.DEVIATION, "deviation", AlignmentNotes::words),
          Wording.of(
                  Alignments.PROTRUSION, "Hertel", protrusion -> protrusion.protrusion().toString())
              .under(protrusion -> Words.maybeQuantity("base", protrusion.base())));

  private AlignmentNotes() {}

  private static Optional<Quantity> amount(Cursor cursor) {
    Optional<BigDecimal> number = cursor.number();
    boolean unit = cursor.takeAny("pd", "\u0394", "\u2206", "\u03b4", "^");
    return number.filter(any -> unit).map(pd -> new Quantity(pd, Unit.PRISM_DIOPTRE));
  }

  private static void deviation(Eye eye) throws NotRead {
    Stand stand = eye.get(STAND);
    List<FixationDistance> fixations = eye.all(FIXATION);
    if (fixations.size() > 1 && eye.has(AMOUNT)) {
      throw NotRead.because("the amount may be for either distance: tell it of each");
    }
    if (fixations.isEmpty()) {
      eye.found(Alignments.DEVIATION, deviation(eye, stand, Optional.empty()));
    }
    for (FixationDistance fixation : fixations) {
      eye.found(Alignments.DEVIATION, deviation(eye, stand, Optional.of(fixation)));
    }
  }

  private static Alignments.Deviation deviation(
      Eye eye, Stand stand, Optional<FixationDistance> fixation) {
    return new Alignments.Deviation(stand.alignment(), stand.control(), eye.find(AMOUNT), fixation);
  }

  private static String words(Alignments.Deviation deviation) {
    return Words.join(
        STANDS.phrase(new Stand(deviation.alignment(), deviation.control())),
        Words.maybe(deviation.amount(), Quantity::toString),
        Words.maybe(deviation.fixation(), FIXATIONS::phrase));
  }
}
