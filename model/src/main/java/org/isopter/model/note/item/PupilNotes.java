package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.pupil.PupilOutline;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** The pupils. */
final class PupilNotes {

  /** What PERRLA and its like claim: equal and reactive to light, and perhaps more. */
  private enum Claim {
    PERL(false, false),
    PERRL(true, false),
    PERLA(false, true),
    PERRLA(true, true);

    private final boolean round;
    private final boolean near;

    Claim(boolean round, boolean near) {
      this.round = round;
      this.near = near;
    }
  }

  private static final PhraseTable<Claim> CLAIMS =
      PhraseTable.<Claim>empty()
          .say(Claim.PERL, "PERL", "PEARL")
          .say(Claim.PERRL, "PERRL")
          .say(Claim.PERLA, "PERLA", "PEARLA")
          .say(Claim.PERRLA, "PERRLA");

  private static final PhraseTable<Lighting> LIGHTS =
      PhraseTable.of(Lighting.class)
          .say(
              Lighting.BRIGHT,
              "bright light",
              "in bright light",
              "in bright",
              "in light",
              "in the light")
          .say(Lighting.ROOM, "room light", "in room light")
          .say(
              Lighting.DIM,
              "dim light",
              "in dim light",
              "in dim",
              "dark",
              "in dark",
              "in the dark");

  private static final PhraseTable<PupilResponse> RESPONSES =
      PhraseTable.of(PupilResponse.class)
          .say(PupilResponse.REACTIVE, "reacts", "reacting", "present")
          .say(PupilResponse.ABSENT, "unreactive", "nil", "none");

  // Of a pupil of which only "brisk" is said, light is meant (common practice, no source).
  private static final PhraseTable<PupilResponse> REACTIONS =
      PhraseTable.<PupilResponse>empty()
          .say(PupilResponse.BRISK, "brisk")
          .say(PupilResponse.REACTIVE, "reactive")
          .say(PupilResponse.SLUGGISH, "sluggish");

  /** How the pupils of the letters react. */
  private static final Slot<PupilResponse> LIVELY = Slot.value("reaction", REACTIONS);

  private static final Slot<Claim> CLAIM = Slot.value("state of the pupils", CLAIMS);
  private static final Slot<Lighting> LIGHT = Slot.condition("light", LIGHTS);

  private static final Slot<Outcome<Quantity>> SIZE =
      Slot.value("pupil size", Common.named(Common.MILLIMETRES.or(PupilNotes::bare), "size"));

  /** That both are meant, which the letters say already. */
  private static final Slot<Boolean> PAIR =
      Slot.condition("both", PhraseTable.<Boolean>empty().say(true, "OU", "BE", "both"));

  /** Two sizes, each with its light: 3 mm bright, 6 mm dim. */
  private static final Slot<List<Pupils.Size>> BOTH_LIGHTS =
      Slot.value("size in two lights", PupilNotes::inTwoLights);

  /** A width in words, for which the record has no place but a remark. */
  private static final Slot<String> WIDTH =
      Slot.value(
          "width",
          PhraseTable.<String>empty()
              .say("dilated", "dilated", "large", "wide", "enlarged")
              .say("mid-dilated", "mid-dilated", "mid dilated", "semi-dilated", "semi dilated")
              .say("small", "small", "constricted", "miosed", "miotic", "pinpoint"));

  /** A pupil that gets smaller in light: 4 > 2. */
  private static final Slot<String> NARROWS = Slot.value("change of size", PupilNotes::narrows);

  /** A pupil that stays as it is in light: 5 -> 5. */
  private static final Slot<String> STAYS = Slot.value("unchanged size", PupilNotes::stays);

  private static final Slot<Outcome<PupilOutline>> OUTLINE =
      Slot.value(
          "pupil shape", Common.named(PhraseTable.of(PupilOutline.class), "outline", "shape"));

  /** A response to light, of which "to light" may be said again: direct R sluggish to light. */
  private static final Slot<PupilResponse> RESPONSE =
      Slot.value(
          "response",
          cursor ->
              RESPONSES
                  .read(cursor)
                  .map(
                      response -> {
                        cursor.take(Lexer.words("to light"));
                        return response;
                      }));

  private static final Slot<Outcome<PupilResponse>> DIRECT =
      Slot.value(
          "direct response",
          Common.behind(RESPONSES, "direct", "light", "direct light")
              .or(to("to light"))
              .or(REACTIONS.map(Outcome::<PupilResponse>found)));

  private static final Slot<Outcome<PupilResponse>> CONSENSUAL =
      Slot.value("consensual response", Common.behind(RESPONSES, "consensual"));

  private static final Slot<Outcome<PupilResponse>> NEAR =
      Slot.value(
          "near response",
          Common.behind(RESPONSES, "near", "accommodation").or(to("to accommodation")));

  private static final Slot<Outcome<PupilEquality>> EQUALITY =
      Slot.valueOfPair(
          "equality of the pupils",
          Common.named(PhraseTable.of(PupilEquality.class).or(PupilNotes::equalsSign), "equality"));

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("pupils in letters", "PERRLA")
              .sides(Grammar.Sides.PAIR)
              .startsWith(CLAIMS.words().stream().map(Heading::of).map(Heading::keptAsWord))
              .slots(CLAIM, NARROWS, SIZE, LIGHT, PAIR, LIVELY)
              .build(PupilNotes::claimed),
          Grammar.of("pupils", "pupils R 4 mm L 3 mm dim")
              .startsWith(Stream.of(Heading.of("pupil").afterWords()))
              .startsWith(Stream.of(Heading.of("pupils").ofBothEyes().afterWords()))
              .slots(
                  SIZE,
                  BOTH_LIGHTS,
                  WIDTH,
                  NARROWS,
                  STAYS,
                  LIGHT,
                  OUTLINE,
                  DIRECT,
                  CONSENSUAL,
                  NEAR)
              .slots(EQUALITY, CLAIM)
              .whole(Pupils.SIZE, Pupils.OUTLINE, Pupils.DIRECT, Pupils.CONSENSUAL, Pupils.NEAR)
              .unsided((said, heading) -> heading.plural())
              .build(PupilNotes::pupil),
          response("direct", Pupils.DIRECT),
          response("consensual", Pupils.CONSENSUAL),
          response("near response", Pupils.NEAR));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Pupils.SIZE, "pupil", "size", size -> size.diameter().toString())
              .under(size -> WrittenWords.of(size.lighting())),
          Wording.of(Pupils.EQUALITY, "pupils", "equality", WrittenWords::of),
          Wording.of(Pupils.OUTLINE, "pupil", "outline", WrittenWords::of),
          Wording.of(Pupils.DIRECT, "pupil", "direct", WrittenWords::of),
          Wording.of(Pupils.CONSENSUAL, "pupil", "consensual", WrittenWords::of),
          Wording.of(Pupils.NEAR, "pupil", "near", WrittenWords::of));

  private PupilNotes() {}

  /**
   * Reads an equals sign. Beside a side or before a number it leads to what is said of an eye: R=4.
   */
  private static Optional<PupilEquality> equalsSign(Cursor cursor) {
    boolean behindSide = cursor.isBehindOne(token -> Common.side(token).isPresent());
    boolean sign = !behindSide && cursor.take("=");
    boolean leads =
        !cursor.atEnd() && (cursor.token().isNumber() || Common.side(cursor.token()).isPresent());
    return sign && !leads ? Optional.of(PupilEquality.EQUAL) : Optional.empty();
  }

  /** Returns the item of one response of the pupils: direct R absent L brisk. */
  private static Grammar response(String name, Finding<PupilResponse> finding) {
    return Grammar.of(name, name + " R brisk L absent")
        .startsWith(name, name + " response", name + " light response")
        .slots(RESPONSE)
        .whole(finding)
        .build(eye -> eye.found(finding, eye.get(RESPONSE)));
  }

  private static Matcher<Outcome<PupilResponse>> to(String stimulus) {
    List<String> words = Lexer.words(stimulus);
    return cursor -> RESPONSES.read(cursor).filter(any -> cursor.take(words)).map(Outcome::found);
  }

  private static void claimed(Eye eye) throws NotRead {
    eye.find(PAIR);
    eye.pair(Pupils.EQUALITY, Outcome.found(PupilEquality.EQUAL));
    for (Site each : Site.EACH_EYE) {
      reacts(eye, eye.get(CLAIM), each);
    }
  }

  /** Adds what the letters claim of a pupil among others; with a side they are not of the pair. */
  private static void claimed(Eye eye, Claim claim, Site site) throws NotRead {
    eye.pair(Pupils.EQUALITY, Outcome.found(PupilEquality.EQUAL));
    reacts(eye, claim, site);
  }

  private static void reacts(Eye eye, Claim claim, Site site) throws NotRead {
    if (claim.round) {
      eye.at(site, Pupils.OUTLINE, PupilOutline.ROUND);
    }
    eye.at(site, Pupils.DIRECT, eye.find(LIVELY).orElse(PupilResponse.REACTIVE));
    eye.remark(eye.find(NARROWS).orElse(""));
    measured(eye, site);
    if (claim.near) {
      eye.at(site, Pupils.NEAR, PupilResponse.REACTIVE);
    }
  }

  /** Adds the size of a pupil beside the letters, in a remark where its light is not stated. */
  private static void measured(Eye eye, Site site) throws NotRead {
    Optional<Quantity> size = eye.find(SIZE).flatMap(Outcome::ifFound);
    boolean pair = eye.site() == Site.BOTH;
    if (pair && size.isPresent()) {
      Optional<Lighting> light = eye.find(LIGHT);
      if (light.isPresent()) {
        eye.at(site, Pupils.SIZE, new Pupils.Size(size.get(), light.get()));
      } else {
        eye.remark("pupil " + size.get() + ", light not stated");
      }
    }
  }

  private static void pupil(Eye eye) throws NotRead {
    Optional<Outcome<PupilEquality>> equality = eye.find(EQUALITY);
    if (equality.isPresent()) {
      eye.pair(Pupils.EQUALITY, equality.get());
    }
    if (eye.has(CLAIM)) {
      claimed(eye, eye.get(CLAIM), eye.site());
    }
    Optional<Outcome<Quantity>> size = eye.find(SIZE);
    boolean ordered =
        size.isPresent() && (eye.has(LIGHT) || size.get().ifFound().isEmpty() || !reacts(eye));
    if (ordered) {
      eye.outcome(Pupils.SIZE, size(eye, size.orElseThrow()));
    }
    for (Pupils.Size one : eye.find(BOTH_LIGHTS).orElse(List.of())) {
      eye.found(Pupils.SIZE, one);
    }
    eye.outcomeOf(Pupils.OUTLINE, OUTLINE);
    inLight(eye);
    eye.outcomeOf(Pupils.CONSENSUAL, CONSENSUAL);
    eye.outcomeOf(Pupils.NEAR, NEAR);
    if (eye.has(WIDTH)) {
      requireFact(eye);
      eye.remark(eye.get(WIDTH));
    }
    if (size.isPresent() && !ordered) {
      eye.remark("pupil " + size.get().ifFound().orElseThrow() + ", light not stated");
    }
  }

  /** Adds the direct response, which the sizes before the light and in it may tell. */
  private static void inLight(Eye eye) throws NotRead {
    Optional<String> narrows = eye.find(NARROWS);
    Optional<String> stays = eye.find(STAYS);
    if (stays.isPresent() && (narrows.isPresent() || eye.has(DIRECT))) {
      throw NotRead.because("what the pupil does in the light is said twice");
    }
    if (narrows.isPresent() && !eye.has(DIRECT)) {
      eye.found(Pupils.DIRECT, PupilResponse.REACTIVE);
    }
    if (stays.isPresent()) {
      eye.found(Pupils.DIRECT, PupilResponse.ABSENT);
    }
    eye.outcomeOf(Pupils.DIRECT, DIRECT);
    eye.remark(narrows.or(() -> stays).orElse(""));
  }

  /** Reads one size before the light and in it, with an arrow between: 5 -> 5. */
  private static Optional<String> stays(Cursor cursor) {
    Optional<BigDecimal> before = cursor.number();
    cursor.take("mm");
    boolean arrow = cursor.take(List.of("-", ">"));
    Optional<BigDecimal> in = cursor.number();
    cursor.take("mm");
    return before
        .filter(first -> arrow && in.filter(second -> second.compareTo(first) == 0).isPresent())
        .map(size -> "pupil " + size + " mm, in the light " + size + " mm");
  }

  /** Reads the size before the light and in it: 4 > 2, 4-2, 4 to 2; the first is the larger. */
  private static Optional<String> narrows(Cursor cursor) {
    Optional<BigDecimal> wide = cursor.number();
    cursor.take("mm");
    boolean dash = cursor.take("-");
    boolean arrow = cursor.takeAny(">", "to") || dash;
    Optional<BigDecimal> narrow = cursor.number();
    cursor.take("mm");
    return wide.flatMap(
        first ->
            narrow
                .filter(second -> arrow && second.compareTo(first) < 0)
                .map(second -> "pupil " + first + " mm, in the light " + second + " mm"));
  }

  private static void requireFact(Eye eye) throws NotRead {
    if (eye.isEmpty()) {
      throw NotRead.because("the width of a pupil is recorded in mm");
    }
  }

  private static Optional<List<Pupils.Size>> inTwoLights(Cursor cursor) {
    Optional<Pupils.Size> one = cursor.attempt(PupilNotes::lit);
    cursor.takeAny(",", "and", "/");
    Optional<Pupils.Size> two = one.isPresent() ? cursor.attempt(PupilNotes::lit) : one;
    return one.flatMap(
        first ->
            two.filter(second -> second.lighting() != first.lighting())
                .map(second -> List.of(first, second)));
  }

  /** Reads a size and its light in either order. */
  private static Optional<Pupils.Size> lit(Cursor cursor) {
    Optional<Lighting> before = cursor.attempt(LIGHTS);
    Optional<Quantity> size = cursor.attempt(Common.MILLIMETRES.or(PupilNotes::bare));
    Optional<Lighting> light = before.isPresent() ? before : cursor.attempt(LIGHTS);
    return size.flatMap(diameter -> light.map(found -> new Pupils.Size(diameter, found)));
  }

  private static boolean reacts(Eye eye) {
    return eye.has(DIRECT) || eye.has(CONSENSUAL) || eye.has(NEAR) || eye.has(OUTLINE);
  }

  /** Reads a size whose unit goes unsaid: all pupils are measured in mm. */
  private static Optional<Quantity> bare(Cursor cursor) {
    return cursor
        .number()
        .filter(number -> number.precision() - number.scale() == 1 && !cursor.sees("+"))
        .filter(number -> !cursor.sees("/") && !cursor.sees(">") && !cursor.sees("-"))
        .map(number -> new Quantity(number, Unit.MILLIMETRE));
  }

  private static Outcome<Pupils.Size> size(Eye eye, Outcome<Quantity> size) throws NotRead {
    if (size.ifFound().isEmpty()) {
      return Outcome.absent(size.ifAbsent().orElseThrow());
    }
    Lighting light = eye.get(LIGHT);
    return size.map(diameter -> new Pupils.Size(diameter, light));
  }
}
