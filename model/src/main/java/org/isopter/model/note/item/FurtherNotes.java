package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.PupilFeature;
import org.isopter.model.answer.sight.Congruity;
import org.isopter.model.answer.sight.FieldBorder;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.answer.sight.MissedSide;
import org.isopter.model.answer.sight.Sparing;
import org.isopter.model.answer.tissue.DiscSign;
import org.isopter.model.answer.tissue.FundusMethod;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.VisualFunctions;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.WordLists;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/**
 * Items of a heading and a word or a number; a sign is there where its name stands beside an eye.
 */
final class FurtherNotes {

  /** An item: how it is read, and how its finding is written. */
  private record Item(List<Grammar> grammars, List<Wording<?>> wordings) {}

  private static final PhraseTable<Presence> PRESENCES =
      PhraseTable.of(Presence.class)
          .say(Presence.PRESENT, "yes")
          .say(Presence.ABSENT, "no", "none", "nil");

  private static final Slot<Presence> PRESENCE = Slot.value("presence", PRESENCES);

  private static final Slot<FundusMethod> LOOKED =
      Slot.condition("technique", PhraseTable.of(FundusMethod.class));

  private static final Slot<FieldMethod> TESTED =
      Slot.condition("technique", PhraseTable.of(FieldMethod.class));

  private static final PhraseTable<Term> QUALITIES =
      WordLists.also(
          WordLists.also(
              WordLists.also(WordLists.vocabulary(Movements.SACCADES), "accurate", "normal"),
              "too-short",
              "hypometric"),
          "too-long",
          "hypermetric");

  private static final Slot<Term> QUALITY = Slot.value("quality", QUALITIES);

  private static final Term ACCURATE =
      QUALITIES.read(new Cursor(Lexer.read("accurate"), 0)).orElseThrow();

  private static final PhraseTable<Term> LINES =
      WordLists.vocabulary(Movements.SACCADES, "saccade-direction", word -> word);

  private static final Slot<Term> LINE = Slot.value("direction", LINES);

  private static final List<Item> ITEMS =
      List.of(
          features(),
          discSigns(),
          word(FieldFeatures.BORDER, "field border", PhraseTable.of(FieldBorder.class), TESTED),
          pair(FieldFeatures.MACULA, "macular sparing", PhraseTable.of(Sparing.class), TESTED),
          pair(FieldFeatures.CONGRUITY, "field losses", PhraseTable.of(Congruity.class), TESTED),
          word(FieldFeatures.CRESCENT, "temporal crescent", PhraseTable.of(Sparing.class), TESTED),
          pair(FieldFeatures.EXTINCTION, "extinction", sides()),
          pair(FieldFeatures.NEGLECT, "neglect", sides()),
          pain(),
          saccades(),
          pair(
              Alignments.HEAD_POSTURE,
              "head posture",
              WordLists.vocabulary(Alignments.HEAD_POSTURE)),
          word(Globes.STATE, "globe", PhraseTable.of(GlobeState.class)),
          word(
              Globes.RED_REFLEX,
              "red reflex",
              WordLists.also(WordLists.vocabulary(Globes.RED_REFLEX), "full", "normal")),
          word(Globes.FUNDUS_VIEW, "view", WordLists.vocabulary(Globes.FUNDUS_VIEW), LOOKED),
          word(
              VisualFunctions.GRID,
              "grid",
              WordLists.also(WordLists.vocabulary(VisualFunctions.GRID), "regular", "normal")),
          number(Colours.BRIGHTNESS, "brightness", Grammar.Sides.EACH, Unit.PERCENT, "70%", "%"),
          number(
              VisualFunctions.PHOTOSTRESS,
              "photostress",
              Grammar.Sides.EACH,
              Unit.SECOND,
              "45 s",
              "s"),
          number(
              VisualFunctions.PREFERENTIAL_LOOKING,
              "preferential looking",
              Grammar.Sides.EACH_OR_ASKED,
              Unit.CYCLES_PER_DEGREE,
              "6.5 cycles per degree",
              "cycles per degree"),
          number(Alignments.CONVERGENCE, "NPC", Grammar.Sides.PAIR, Unit.CENTIMETRE, "8 cm", "cm"),
          contrast());

  static final List<Grammar> GRAMMARS =
      ITEMS.stream().flatMap(item -> item.grammars().stream()).toList();

  static final List<Wording<?>> WORDINGS =
      ITEMS.stream().<Wording<?>>flatMap(item -> item.wordings().stream()).toList();

  private FurtherNotes() {}

  private static PhraseTable<MissedSide> sides() {
    return PhraseTable.<MissedSide>empty()
        .say(MissedSide.NONE, "none")
        .say(MissedSide.RIGHT, "right missed")
        .say(MissedSide.LEFT, "left missed");
  }

  @SafeVarargs
  private static <V> Item word(
      Finding<V> finding,
      String heading,
      PhraseTable<V> words,
      Slot<? extends Concept>... technique) {
    return word(finding, heading, Grammar.Sides.EACH, words, technique);
  }

  @SafeVarargs
  private static <V> Item pair(
      Finding<V> finding,
      String heading,
      PhraseTable<V> words,
      Slot<? extends Concept>... technique) {
    return word(finding, heading, Grammar.Sides.PAIR, words, technique);
  }

  @SafeVarargs
  private static <V> Item word(
      Finding<V> finding,
      String heading,
      Grammar.Sides sides,
      PhraseTable<V> words,
      Slot<? extends Concept>... technique) {
    String example = words.words().get(0).replace('-', ' ');
    return one(finding, heading, sides, words, words::phrase, example, technique);
  }

  private static Item number(
      Finding<Quantity> finding,
      String heading,
      Grammar.Sides sides,
      Unit unit,
      String example,
      String said) {
    String behind = said.equals("%") ? said : " " + said;
    return one(
        finding,
        heading,
        sides,
        quantity(unit, said),
        found -> found.value().toPlainString() + behind,
        example);
  }

  /** Returns the item of a heading and one thing behind it. */
  @SafeVarargs
  private static <V> Item one(
      Finding<V> finding,
      String heading,
      Grammar.Sides sides,
      Matcher<V> read,
      Function<V, String> written,
      String example,
      Slot<? extends Concept>... technique) {
    Slot<V> slot = Slot.value(heading, read);
    String side = sides == Grammar.Sides.PAIR ? " " : " R ";
    Grammar.Draft draft =
        Grammar.of(heading, heading + side + example)
            .sides(sides)
            .startsWith(heading)
            .slots(slot)
            .whole(finding);
    for (Slot<? extends Concept> how : technique) {
      draft.method(how);
    }
    return new Item(
        List.of(draft.build(eye -> eye.found(finding, eye.get(slot)))),
        List.of(Wording.of(finding, heading, written)));
  }

  private static Matcher<Quantity> quantity(Unit unit, String said) {
    if (unit.equals(Unit.PERCENT)) {
      return Common::share;
    }
    List<String> words = Arrays.asList(said.split(" ", -1));
    return cursor ->
        cursor
            .number()
            .filter(any -> words.stream().allMatch(cursor::take))
            .map(number -> new Quantity(number, unit));
  }

  /** Reads log units; a number with two decimals is nothing else (common practice, no source). */
  private static Optional<BigDecimal> logUnits(Cursor cursor) {
    Optional<BigDecimal> number = cursor.number();
    boolean named = cursor.take("log") && cursor.take("units");
    return number.filter(log -> named || (log.scale() == 2 && !cursor.sees("%")));
  }

  private static Item contrast() {
    return one(
        VisualFunctions.CONTRAST,
        "contrast",
        Grammar.Sides.EACH_OR_ASKED,
        FurtherNotes::logUnits,
        found -> found.toPlainString() + " log units",
        "1.65 log units");
  }

  private static Item features() {
    return signs(
        Pupils.FEATURE,
        "pupil feature",
        PupilFeature.values(),
        Pupils.Feature::new,
        Pupils.Feature::feature,
        Pupils.Feature::presence,
        Optional.empty());
  }

  private static Item discSigns() {
    return signs(
        Discs.SIGN,
        "disc sign",
        DiscSign.values(),
        Discs.Sign::new,
        Discs.Sign::sign,
        Discs.Sign::presence,
        Optional.of(LOOKED));
  }

  private interface Make<S, V> {
    V of(S sign, Presence presence);
  }

  private static <S extends Concept, V> Item signs(
      Finding<V> finding,
      String heading,
      S[] signs,
      Make<S, V> make,
      Function<V, S> sign,
      Function<V, Presence> presence,
      Optional<Slot<FundusMethod>> technique) {
    List<Grammar> grammars = new ArrayList<>();
    for (S one : signs) {
      Grammar.Draft draft = SignItems.named(one, heading).slots(PRESENCE);
      technique.ifPresent(draft::method);
      grammars.add(
          draft
              .unsided((said, any) -> said.find(PRESENCE).equals(Optional.of(Presence.ABSENT)))
              .build(
                  eye ->
                      eye.found(
                          finding, make.of(one, eye.find(PRESENCE).orElse(Presence.PRESENT)))));
    }
    grammars.add(SignItems.unnamed(finding, heading, technique));
    return new Item(
        grammars,
        List.of(
            Wording.<V>of(finding, heading, value -> PRESENCES.phrase(presence.apply(value)))
                .under(value -> WrittenWords.of(sign.apply(value)))));
  }

  /** Returns the item of pain on movement, which is there where its name stands beside an eye. */
  private static Item pain() {
    return new Item(
        List.of(
            Grammar.of("pain on movement", "pain on movement R present L absent")
                .startsWith(Stream.of(Heading.of("pain on movement").afterWords()))
                .slots(PRESENCE, Common.DEGREE)
                .whole(Movements.PAIN)
                .unsided((said, any) -> said.find(PRESENCE).equals(Optional.of(Presence.ABSENT)))
                .build(FurtherNotes::pain)),
        List.of(Wording.of(Movements.PAIN, "pain on movement", PRESENCES::phrase)));
  }

  private static void pain(Eye eye) throws NotRead {
    Presence presence = eye.find(PRESENCE).orElse(Presence.PRESENT);
    eye.found(Movements.PAIN, presence);
    eye.degree(presence == Presence.PRESENT);
  }

  private static Item saccades() {
    return new Item(
        List.of(
            Grammar.of("saccades", "saccades R slow horizontal")
                .sides(Grammar.Sides.EACH_OR_BOTH)
                .startsWith("saccades")
                .slots(QUALITY, LINE)
                .whole(Movements.SACCADES)
                .unsided((said, any) -> said.find(QUALITY).equals(Optional.of(ACCURATE)))
                .unsidedAt(Site.PAIR)
                .build(
                    eye ->
                        eye.found(
                            Movements.SACCADES,
                            new Movements.Saccades(eye.get(QUALITY), eye.find(LINE))))),
        List.of(
            Wording.of(
                Movements.SACCADES,
                "saccades",
                seen ->
                    WrittenWords.join(
                        QUALITIES.phrase(seen.quality()),
                        WrittenWords.maybe(seen.direction(), LINES::phrase)))));
  }
}
