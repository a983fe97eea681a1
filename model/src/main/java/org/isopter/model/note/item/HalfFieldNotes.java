package org.isopter.model.note.item;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/**
 * A half or a quarter of the field that both eyes have lost: what is lost on the right is temporal
 * in the right eye and nasal in the left. Lost regions do not answer; of the others nothing is said
 * (common practice, no source).
 */
final class HalfFieldNotes {

  /** Which part of a half is lost. */
  private enum Height {
    UPPER,
    LOWER
  }

  private static final Slot<Height> HEIGHT =
      Slot.value(
          "upper or lower",
          PhraseTable.<Height>empty()
              .say(Height.UPPER, "superior", "upper")
              .say(Height.LOWER, "inferior", "lower"));

  private static final Slot<FieldMethod> METHOD =
      Slot.condition(
          "technique",
          PhraseTable.<FieldMethod>empty().say(FieldMethod.CONFRONTATION, "to confrontation"));

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("homonymous hemianopia", "R homonymous hemianopia")
              .sides(Grammar.Sides.NAMED)
              .startsWith(Stream.of(Heading.of("homonymous hemianopia").afterWords()))
              .slots(FieldNotes.TARGET)
              .method(METHOD)
              .build(eye -> homonymous(eye, Optional.empty())),
          Grammar.of("homonymous quadrantanopia", "R superior homonymous quadrantanopia")
              .sides(Grammar.Sides.NAMED)
              .startsWith(Stream.of(Heading.of("homonymous quadrantanopia").afterWords()))
              .slots(HEIGHT, FieldNotes.TARGET)
              .method(METHOD)
              .build(eye -> homonymous(eye, Optional.of(eye.get(HEIGHT)))),
          Grammar.of("bitemporal hemianopia", "bitemporal hemianopia")
              .sides(Grammar.Sides.PAIR)
              .startsWith("bitemporal hemianopia")
              .slots(FieldNotes.TARGET)
              .method(METHOD)
              .build(
                  eye -> {
                    for (Site site : Site.EACH_EYE) {
                      lose(eye, site, true, Optional.empty());
                    }
                  }));

  private HalfFieldNotes() {}

  private static void homonymous(Eye eye, Optional<Height> height) throws NotRead {
    Site half =
        eye.named().orElseThrow(() -> NotRead.because("it is not said which half: right or left"));
    if (eye.isNamedAsEye()) {
      throw NotRead.because("both eyes have lost it, and the side is that of the field: R or L");
    }
    for (Site site : Site.EACH_EYE) {
      lose(eye, site, site == half, height);
    }
  }

  private static void lose(Eye eye, Site site, boolean temporal, Optional<Height> height)
      throws NotRead {
    Map<FieldRegion, Outcome<FieldResponse>> regions = new EnumMap<>(FieldRegion.class);
    if (!height.equals(Optional.of(Height.LOWER))) {
      regions.put(
          temporal ? FieldRegion.SUPEROTEMPORAL : FieldRegion.SUPERONASAL,
          Outcome.found(FieldResponse.ABSENT));
    }
    if (!height.equals(Optional.of(Height.UPPER))) {
      regions.put(
          temporal ? FieldRegion.INFEROTEMPORAL : FieldRegion.INFERONASAL,
          Outcome.found(FieldResponse.ABSENT));
    }
    eye.at(
        site,
        Fields.CONFRONTATION,
        new Fields.Confrontation(regions, eye.find(FieldNotes.TARGET), Optional.empty()));
  }
}
