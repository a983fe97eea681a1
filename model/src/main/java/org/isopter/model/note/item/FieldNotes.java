package org.isopter.model.note.item;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.BlindSpotSize;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.sight.FieldTarget;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;

/** The visual field by confrontation, and the size of the blind spot in words. */
final class FieldNotes {

  /** Some regions that answer alike. */
  private record Patch(List<FieldRegion> regions, Outcome<FieldResponse> response) {}

  private static final List<FieldRegion> QUADRANTS =
      List.of(
          FieldRegion.SUPEROTEMPORAL,
          FieldRegion.SUPERONASAL,
          FieldRegion.INFEROTEMPORAL,
          FieldRegion.INFERONASAL);

  private static final List<String> ALTITUDE = List.of("loss", "field loss", "hemianopia");

  private static final PhraseTable<FieldRegion> REGIONS =
      PhraseTable.<FieldRegion>empty()
          .say(FieldRegion.SUPEROTEMPORAL, "ST", "superotemporal", "upper temporal")
          .say(FieldRegion.SUPERONASAL, "SN", "superonasal", "upper nasal")
          .say(FieldRegion.INFEROTEMPORAL, "IT", "inferotemporal", "lower temporal")
          .say(FieldRegion.INFERONASAL, "IN", "inferonasal", "lower nasal")
          .say(FieldRegion.CENTRAL, "central", "centre", "center");

  // A quadrant that is lost does not answer (common practice, no source).
  private static final PhraseTable<FieldResponse> RESPONSES =
      PhraseTable.of(FieldResponse.class)
          .say(FieldResponse.FULL, "intact")
          .say(FieldResponse.ABSENT, "lost", "loss");

  private static final PhraseTable<FieldTarget> TARGETS =
      PhraseTable.of(FieldTarget.class)
          .say(FieldTarget.FINGER_COUNTING, "to finger counting", "to counting fingers", "to FC")
          .say(FieldTarget.MOVING_FINGERS, "to moving fingers")
          .say(FieldTarget.RED_TARGET, "to red target", "to red", "red pin", "to red pin")
          .say(FieldTarget.WHITE_TARGET, "to white target", "to white")
          .say(FieldTarget.HAND, "to hand")
          .say(FieldTarget.LIGHT, "to light");

  /** What the words for a lost part of one eye's field claim: its quadrants do not answer. */
  private static final PhraseTable<List<FieldRegion>> LOST = lost();

  /** WrittenWords for a lost part of the field that need no heading. */
  private static final List<String> STARTS =
      LOST.words().stream()
          .filter(words -> words.matches(".*(anopia|altitudinal loss|field loss|half loss)"))
          .toList();

  private static final List<String> HALF_STARTS = List.of("superior half", "inferior half");

  private static final PhraseTable<List<FieldRegion>> HALVES =
      PhraseTable.<List<FieldRegion>>empty()
          .say(List.of(FieldRegion.SUPEROTEMPORAL, FieldRegion.SUPERONASAL), "superior")
          .say(List.of(FieldRegion.INFEROTEMPORAL, FieldRegion.INFERONASAL), "inferior")
          .say(List.of(FieldRegion.SUPEROTEMPORAL, FieldRegion.INFEROTEMPORAL), "temporal")
          .say(List.of(FieldRegion.SUPERONASAL, FieldRegion.INFERONASAL), "nasal");

  private static final Slot<Patch> PATCH = Slot.values("region", FieldNotes::patch);

  // FTC is "to confrontation" for some and "to counting" for others: full is what both claim.
  private static final Slot<Boolean> FULL =
      Slot.value(
          "full field",
          PhraseTable.<Boolean>empty()
              .say(true, "full", "intact", "FTC", "normal", "no defect", "no defects")
              .say(false, "rest full", "rest intact", "otherwise full")
              .or(Common.capitalN()));

  static final Slot<FieldTarget> TARGET = Slot.condition("target", TARGETS);

  private static final Slot<Quantity> DISTANCE =
      Slot.condition("testing distance", Common.AT_DISTANCE);

  private static final Slot<FieldMethod> METHOD =
      Slot.condition(
          "technique",
          PhraseTable.of(FieldMethod.class)
              .say(
                  FieldMethod.CONFRONTATION,
                  "by confrontation",
                  "to confrontation",
                  "confrontation field",
                  "confrontation fields"));

  private static final Slot<BlindSpotSize> SPOT =
      Slot.value("size of the blind spot", PhraseTable.of(BlindSpotSize.class));

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("visual field", "VF R full, L IT reduced, rest full")
              .startsWith(STARTS.stream().map(Heading::of).map(Heading::keptAsWord))
              .startsWith(HALF_STARTS.stream().map(Heading::of).map(Heading::keptAsWord))
              .startsWith("VF", "CVF", "field", "fields", "visual field", "visual fields")
              .startsWith(
                  Stream.of("confrontation", "confrontation field", "confrontation fields")
                      .map(Heading::of)
                      .map(Heading::keptAsWord))
              .slots(PATCH, FULL, TARGET, DISTANCE)
              .method(METHOD)
              .whole(Fields.CONFRONTATION)
              .unsided(
                  (said, heading) -> said.find(FULL).equals(Optional.of(true)) && !said.has(PATCH))
              .build(eye -> eye.found(Fields.CONFRONTATION, field(eye))),
          Grammar.of("blind spot", "blind spot R enlarged L normal")
              .startsWith(Stream.of(Heading.of("blind spot").afterWords()))
              .startsWith(Stream.of(Heading.of("blind spots").ofBothEyes().afterWords()))
              .unsided((said, heading) -> heading.plural())
              .slots(SPOT)
              .method(METHOD)
              .whole(Fields.BLIND_SPOT)
              .build(eye -> eye.found(Fields.BLIND_SPOT, spot(eye.get(SPOT)))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Fields.CONFRONTATION, "VF", any -> "")
              .under(FieldNotes::conditions)
              .where(FieldNotes::patches),
          Wording.of(Fields.BLIND_SPOT, "blind spot", any -> "").where(FieldNotes::spotWords));

  private FieldNotes() {}

  private static PhraseTable<List<FieldRegion>> lost() {
    PhraseTable<List<FieldRegion>> words = PhraseTable.empty();
    List<String> halves = List.of("hemianopia", "hemifield loss", "field loss", "loss");
    say(
        words,
        FieldRegion.SUPEROTEMPORAL,
        FieldRegion.SUPERONASAL,
        "superior altitudinal",
        ALTITUDE);
    say(
        words,
        FieldRegion.INFEROTEMPORAL,
        FieldRegion.INFERONASAL,
        "inferior altitudinal",
        ALTITUDE);
    List<String> half = List.of("hemifield loss", "field loss", "half loss");
    say(words, FieldRegion.SUPEROTEMPORAL, FieldRegion.SUPERONASAL, "superior", half);
    say(words, FieldRegion.INFEROTEMPORAL, FieldRegion.INFERONASAL, "inferior", half);
    say(words, FieldRegion.SUPEROTEMPORAL, FieldRegion.INFEROTEMPORAL, "temporal", halves);
    say(words, FieldRegion.SUPERONASAL, FieldRegion.INFERONASAL, "nasal", halves);
    for (FieldRegion quadrant : QUADRANTS) {
      for (String name : REGIONS.phrases(quadrant)) {
        words.say(List.of(quadrant), name + " quadrantanopia", name + " quadrant loss");
      }
    }
    return words;
  }

  private static void say(
      PhraseTable<List<FieldRegion>> words,
      FieldRegion one,
      FieldRegion other,
      String lead,
      List<String> losses) {
    losses.forEach(loss -> words.say(List.of(one, other), lead + " " + loss));
  }

  private static Optional<Patch> patch(Cursor cursor) {
    Optional<List<FieldRegion>> lost = cursor.attempt(LOST);
    return lost.isPresent()
        ? lost.map(regions -> new Patch(regions, Outcome.found(FieldResponse.ABSENT)))
        : cursor.attempt(FieldNotes::answered).or(() -> cursor.attempt(FieldNotes::half));
  }

  /** Reads a half and its answer in either order: reduced superiorly, superior half reduced. */
  private static Optional<Patch> half(Cursor cursor) {
    Optional<FieldResponse> before = cursor.attempt(RESPONSES);
    Optional<List<FieldRegion>> half = cursor.attempt(HALVES);
    cursor.takeAny("half", "field", "hemifield");
    Optional<FieldResponse> answer = before.isPresent() ? before : cursor.attempt(RESPONSES);
    return half.flatMap(
        regions -> answer.map(response -> new Patch(regions, Outcome.found(response))));
  }

  private static Optional<Patch> answered(Cursor cursor) {
    List<FieldRegion> regions = new ArrayList<>();
    Optional<FieldRegion> next = cursor.attempt(REGIONS);
    while (next.isPresent()) {
      regions.add(next.get());
      next = cursor.attempt(FieldNotes::further);
    }
    return regions.isEmpty()
        ? Optional.empty()
        : Common.outcome(RESPONSES).read(cursor).map(response -> new Patch(regions, response));
  }

  private static Optional<FieldRegion> further(Cursor cursor) {
    cursor.takeAny("and", "+");
    return REGIONS.read(cursor);
  }

  private static Fields.Confrontation field(Eye eye) throws NotRead {
    Map<FieldRegion, Outcome<FieldResponse>> regions = new EnumMap<>(FieldRegion.class);
    for (Patch patch : eye.all(PATCH)) {
      for (FieldRegion region : patch.regions()) {
        if (regions.put(region, patch.response()) != null) {
          throw NotRead.because("a region of the field is said twice");
        }
      }
    }
    Optional<Boolean> full = eye.find(FULL);
    if (full.isPresent()) {
      fill(regions, full.get());
    }
    if (regions.isEmpty()) {
      throw NotRead.because("it is not said what any part of the field gave");
    }
    return new Fields.Confrontation(regions, eye.find(TARGET), eye.find(DISTANCE));
  }

  private static void fill(Map<FieldRegion, Outcome<FieldResponse>> regions, boolean whole)
      throws NotRead {
    if (whole != regions.keySet().stream().noneMatch(QUADRANTS::contains)) {
      throw NotRead.because(
          whole
              ? "the field is full, and yet a quadrant is told apart"
              : "the rest is full, and yet no quadrant is told apart");
    }
    QUADRANTS.forEach(quadrant -> regions.putIfAbsent(quadrant, Outcome.found(FieldResponse.FULL)));
  }

  private static Fields.BlindSpot spot(BlindSpotSize size) {
    return new Fields.BlindSpot(
        new EnumMap<>(Fields.Edge.class), Optional.empty(), Optional.of(size));
  }

  private static String conditions(Fields.Confrontation field) {
    return WrittenWords.join(
        WrittenWords.maybe(field.target(), TARGETS::phrase),
        WrittenWords.maybeQuantity("@", field.distance()));
  }

  /** Returns the regions in words; a field of which no region is said has none. */
  private static Optional<String> patches(Fields.Confrontation field) {
    List<String> words = new ArrayList<>();
    field
        .regions()
        .forEach(
            (region, outcome) ->
                words.add(
                    REGIONS.phrase(region)
                        + " "
                        + outcome.fold(WrittenWords::of, Common.ABSENCES::phrase)));
    return Optional.of(String.join(" ", words)).filter(some -> !some.isEmpty());
  }

  private static Optional<String> spotWords(Fields.BlindSpot spot) {
    boolean onlyWords = spot.edges().isEmpty() && spot.screen().isEmpty();
    return spot.size().filter(size -> onlyWords).map(WrittenWords::of);
  }
}
