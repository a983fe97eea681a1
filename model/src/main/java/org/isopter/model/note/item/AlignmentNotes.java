package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.movement.CoverMethod;
import org.isopter.model.answer.movement.FixationDistance;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Quantity;

/** The position of the eyes to each other on covering one, and how far they stand forward. */
final class AlignmentNotes {

  private static final PhraseTable<CoverMethod> METHODS =
      PhraseTable.of(CoverMethod.class)
          .say(CoverMethod.ALTERNATE_COVER, "PCT", "APCT", "ACT", "prism cover test")
          .say(CoverMethod.ALTERNATE_COVER, "by PCT", "alternate cover test", "by APCT")
          .say(CoverMethod.COVER_UNCOVER, "cover uncover test", "cover/uncover")
          .say(CoverMethod.CORNEAL_REFLEXES, "by Hirschberg", "Hirschberg");

  private static final Slot<AlignmentWords.Position> POSITION =
      Slot.values("deviation", AlignmentWords.POSITION);
  private static final Slot<Correction> CORRECTION =
      Slot.condition("correction", AcuityWords.CORRECTIONS);
  private static final Slot<CoverMethod> METHOD = Slot.condition("technique", METHODS);
  private static final Slot<Quantity> LENGTH = Slot.value("length in mm", Common.BARE_MILLIMETRES);

  private static final Slot<Quantity> BASE =
      Slot.condition(
          "distance of the rims",
          cursor ->
              cursor.takeAny("base", "@")
                  ? Common.BARE_MILLIMETRES.read(cursor)
                  : Optional.empty());

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("deviation of the eyes", "deviation eso 25 PD far")
              .sides(Grammar.Sides.PAIR)
              .startsWith("deviation", "CT", "cover test")
              .startsWith(
                  AlignmentWords.starts().stream().map(Heading::of).map(Heading::keptAsWord))
              .startsWith(METHODS.words().stream().map(Heading::of).map(Heading::keptAsWord))
              .slots(POSITION, CORRECTION)
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
              .under(protrusion -> WrittenWords.maybeQuantity("base", protrusion.base())));

  private AlignmentNotes() {}

  private static void deviation(Eye eye) throws NotRead {
    List<AlignmentWords.Position> positions = eye.all(POSITION);
    requireOneOrder(positions);
    if (positions.isEmpty()) {
      eye.get(POSITION);
    }
    Optional<AlignmentWords.Stand> last = Optional.empty();
    for (AlignmentWords.Position position : positions) {
      last = position.stand().isPresent() ? position.stand() : last;
      if (last.isEmpty()) {
        throw NotRead.because("it is not said which deviation");
      }
      add(eye, position, last.get());
    }
  }

  /** Where several distances are said, each stands before its deviation, or each behind. */
  private static void requireOneOrder(List<AlignmentWords.Position> positions) throws NotRead {
    boolean one = positions.stream().map(AlignmentWords.Position::leads).distinct().count() < 2;
    boolean each = positions.stream().allMatch(position -> !position.fixations().isEmpty());
    if (positions.size() > 1 && !(one && each)) {
      throw NotRead.because("it is not said which deviation is at which distance");
    }
  }

  private static void add(Eye eye, AlignmentWords.Position position, AlignmentWords.Stand stand)
      throws NotRead {
    if (position.fixations().size() > 1 && position.amount().isPresent()) {
      throw NotRead.because("the amount may be for either distance: say it of each");
    }
    List<Optional<FixationDistance>> fixations =
        position.fixations().isEmpty()
            ? List.of(Optional.empty())
            : position.fixations().stream().map(Optional::of).toList();
    for (Optional<FixationDistance> fixation : fixations) {
      eye.found(
          Alignments.DEVIATION,
          new Alignments.Deviation(
              stand.alignment(), stand.control(), position.amount(), fixation));
      position.remarks().forEach(eye::remark);
      eye.find(CORRECTION).map(WrittenWords::of).ifPresent(eye::remark);
    }
  }

  private static String words(Alignments.Deviation deviation) {
    return WrittenWords.join(
        AlignmentWords.STANDS.phrase(
            new AlignmentWords.Stand(deviation.alignment(), deviation.control())),
        WrittenWords.maybe(deviation.amount(), Quantity::toString),
        WrittenWords.maybe(deviation.fixation(), AlignmentWords.FIXATIONS::phrase));
  }
}
