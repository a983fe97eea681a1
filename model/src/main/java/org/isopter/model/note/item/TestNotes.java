package org.isopter.model.note.item;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.pupil.DrugEffect;
import org.isopter.model.answer.pupil.TestDrug;
import org.isopter.model.answer.sight.ComparedQuality;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.answer.sight.MeridianDifference;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.WordLists;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** Tests of which the conditions are said first: what was compared, which target, which drug. */
final class TestNotes {

  /** How far a target was seen in a direction. */
  private record Extent(FieldFeatures.Direction direction, Quantity degrees) {}

  private static final PhraseTable<ComparedQuality> QUALITIES =
      PhraseTable.of(ComparedQuality.class);

  private static final Slot<ComparedQuality> QUALITY = Slot.condition("quality", QUALITIES);

  private static final PhraseTable<MeridianDifference> DIFFERENCES =
      PhraseTable.<MeridianDifference>empty()
          .say(MeridianDifference.NONE, "alike", "none", "same", "equal", "no difference")
          .say(MeridianDifference.TEMPORAL_WEAKER, "temporal weaker", "weaker temporally")
          .say(MeridianDifference.NASAL_WEAKER, "nasal weaker", "weaker nasally");

  private static final Slot<MeridianDifference> DIFFERENCE = Slot.value("difference", DIFFERENCES);

  private static final PhraseTable<Term> STIMULI =
      WordLists.vocabulary(FieldFeatures.ISOPTER, "stimulus", word -> word);

  private static final Slot<Term> STIMULUS = Slot.condition("target", STIMULI);

  private static final PhraseTable<FieldFeatures.Direction> DIRECTIONS = directions();

  private static final Slot<Extent> EXTENT = Slot.values("extent", TestNotes::extent);

  private static final Slot<FieldMethod> TESTED =
      Slot.condition("technique", PhraseTable.of(FieldMethod.class));

  private static final PhraseTable<TestDrug> DRUGS = PhraseTable.of(TestDrug.class);

  private static final PhraseTable<DrugEffect> EFFECTS =
      PhraseTable.of(DrugEffect.class).say(DrugEffect.UNCHANGED, "no change");

  private static final Slot<TestDrug> DRUG = Slot.condition("drug", DRUGS);

  private static final Slot<Quantity> STRENGTH =
      Slot.condition("strength", measured("", Unit.PERCENT, "%"));

  private static final Slot<Quantity> WAITED =
      Slot.condition("time waited", measured("after", Unit.MINUTE, "min"));

  private static final Slot<DrugEffect> EFFECT = Slot.value("effect", EFFECTS);

  private static final Slot<Quantity> BEFORE =
      Slot.value("size before the drop", measured("from", Unit.MILLIMETRE, "mm"));

  private static final Slot<Quantity> AFTER =
      Slot.value("size after the drop", measured("to", Unit.MILLIMETRE, "mm"));

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("comparison across the meridian", "meridian comparison red R nasal weaker")
              .startsWith("meridian comparison")
              .slots(QUALITY, DIFFERENCE)
              .whole(Colours.ACROSS_MERIDIAN)
              .build(
                  eye ->
                      eye.found(
                          Colours.ACROSS_MERIDIAN,
                          new Colours.AcrossMeridian(eye.get(DIFFERENCE), eye.get(QUALITY)))),
          Grammar.of("kinetic isopter", "isopter III4e R temporal 80 nasal 50")
              .startsWith("isopter", "kinetic isopter")
              .slots(STIMULUS, EXTENT)
              .method(TESTED)
              .whole(FieldFeatures.ISOPTER)
              .build(eye -> eye.found(FieldFeatures.ISOPTER, isopter(eye))),
          Grammar.of("drug test of the pupil", "drug test apraclonidine 0.5% R wider L unchanged")
              .startsWith("drug test")
              .slots(DRUG, STRENGTH, WAITED, EFFECT, BEFORE, AFTER)
              .whole(Drops.TEST)
              .build(eye -> eye.found(Drops.TEST, drugTest(eye))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(
                  Colours.ACROSS_MERIDIAN,
                  "meridian comparison",
                  seen -> DIFFERENCES.phrase(seen.difference()))
              .under(seen -> WrittenWords.of(seen.quality())),
          Wording.of(FieldFeatures.ISOPTER, "isopter", any -> "")
              .under(isopter -> STIMULI.phrase(isopter.stimulus()))
              .where(TestNotes::extents),
          Wording.of(Drops.TEST, "drug test", TestNotes::effect).under(TestNotes::drop));

  private TestNotes() {}

  private static PhraseTable<FieldFeatures.Direction> directions() {
    PhraseTable<FieldFeatures.Direction> words = PhraseTable.empty();
    for (FieldFeatures.Direction direction : FieldFeatures.Direction.values()) {
      words.say(direction, direction.name().toLowerCase(java.util.Locale.ROOT));
    }
    return words
        .say(FieldFeatures.Direction.SUPERIOR, "up", "above", "upper", "upward", "upwards")
        .say(FieldFeatures.Direction.INFERIOR, "down", "below", "lower", "downward", "downwards");
  }

  /** Returns a matcher of a number with its unit, behind a word where one is given. */
  private static Matcher<Quantity> measured(String lead, Unit unit, String said) {
    return cursor ->
        Optional.of(cursor)
            .filter(c -> lead.isEmpty() || c.take(lead))
            .flatMap(Cursor::number)
            .filter(any -> cursor.take(said))
            .map(number -> new Quantity(number, unit));
  }

  private static Optional<Extent> extent(Cursor cursor) {
    return DIRECTIONS.read(cursor).flatMap(direction -> degrees(cursor, direction));
  }

  private static Optional<Extent> degrees(Cursor cursor, FieldFeatures.Direction direction) {
    Optional<Extent> extent =
        cursor.number().map(number -> new Extent(direction, new Quantity(number, Unit.DEGREE)));
    cursor.takeAny("deg", "degrees", "\u00b0");
    return extent;
  }

  private static FieldFeatures.Isopter isopter(Eye eye) throws NotRead {
    Map<FieldFeatures.Direction, Quantity> extents = new EnumMap<>(FieldFeatures.Direction.class);
    for (Extent extent : eye.all(EXTENT)) {
      if (extents.put(extent.direction(), extent.degrees()) != null) {
        throw NotRead.because("a direction is said twice");
      }
    }
    if (extents.isEmpty()) {
      throw NotRead.because("it is not said how far the target was seen");
    }
    return new FieldFeatures.Isopter(eye.get(STIMULUS), extents);
  }

  private static Optional<String> extents(FieldFeatures.Isopter isopter) {
    List<String> words = new ArrayList<>();
    isopter
        .extents()
        .forEach(
            (direction, degrees) ->
                words.add(DIRECTIONS.phrase(direction) + " " + degrees.value().toPlainString()));
    return Optional.of(String.join(" ", words)).filter(some -> !some.isEmpty());
  }

  private static Drops.DrugTest drugTest(Eye eye) throws NotRead {
    return new Drops.DrugTest(
        eye.get(EFFECT),
        eye.get(DRUG),
        eye.find(STRENGTH),
        eye.find(WAITED),
        eye.find(BEFORE),
        eye.find(AFTER));
  }

  private static String drop(Drops.DrugTest test) {
    return WrittenWords.join(
        DRUGS.phrase(test.drug()),
        WrittenWords.maybe(test.strength(), share -> share.value().toPlainString() + "%"),
        WrittenWords.maybe(
            test.waited(), time -> "after " + time.value().toPlainString() + " min"));
  }

  private static String effect(Drops.DrugTest test) {
    return WrittenWords.join(
        EFFECTS.phrase(test.effect()),
        WrittenWords.maybe(test.before(), size -> "from " + size.value().toPlainString() + " mm"),
        WrittenWords.maybe(test.after(), size -> "to " + size.value().toPlainString() + " mm"));
  }
}
