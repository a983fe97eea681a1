package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.PosteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.answer.tissue.SegmentMethod;
import org.isopter.model.catalogue.Segments;
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

/** Signs of the front and of the back of the eye. */
final class SegmentNotes {

  /** A sign of the chamber: whether it is there, and how much of it. */
  private record Found(Presence presence, String amount) {}

  private static final Slot<Presence> PRESENCE =
      Slot.value(
          "presence",
          PhraseTable.of(Presence.class)
              .say(Presence.PRESENT, "+", "yes")
              .say(Presence.ABSENT, "no", "none", "nil", "without", "-"));

  /** How much of a sign there is; the record has no place for it but a remark. */
  private static final Slot<String> AMOUNT = Slot.value("amount", SegmentNotes::amount);

  private static final PhraseTable<String> AMOUNTS =
      PhraseTable.<String>empty()
          .say("trace", "trace", "tr")
          .say("mild", "mild", "early", "slight")
          .say("moderate", "moderate", "mod")
          .say("dense", "dense", "severe", "advanced", "marked")
          .say("mature", "mature")
          .say("immature", "immature")
          .say("brunescent", "brunescent")
          .say("few", "few", "occasional")
          .say("several", "several", "scattered", "multiple")
          .say("NS", "NS", "nuclear sclerosis", "nuclear sclerotic", "nuclear")
          .say("NSC", "NSC")
          .say("PSC", "PSC", "PSCO", "posterior subcapsular")
          .say("cortical", "cortical");

  private static final Slot<Boolean> CLEAR =
      Slot.value("clear", PhraseTable.<Boolean>empty().say(true, "clear"));

  private static final Slot<Boolean> OEDEMA =
      Slot.value(
          "oedema of the cornea",
          PhraseTable.<Boolean>empty().say(true, "oedema", "edema", "swollen"));

  /** Whether the conjunctiva is red. */
  private static final Slot<Presence> REDNESS =
      Slot.value(
          "redness of the conjunctiva",
          PhraseTable.<Presence>empty()
              .say(Presence.PRESENT, "red", "injected", "injection", "hyperaemic", "hyperemic")
              .say(Presence.ABSENT, "white", "not red", "not injected", "no injection"));

  private static final Slot<AnteriorSign> STATE =
      Slot.value(
          "state of the lens",
          PhraseTable.<AnteriorSign>empty()
              .say(AnteriorSign.ARTIFICIAL_LENS, "artificial lens")
              .say(AnteriorSign.LENS_OPACITY, "lens opacity", "opacity")
              .say(AnteriorSign.NO_LENS, "no lens"));

  private static final Slot<Boolean> FLAT =
      Slot.value("flat", PhraseTable.<Boolean>empty().say(true, "flat", "attached"));

  private static final Slot<Boolean> DEEP =
      Slot.value("depth", PhraseTable.<Boolean>empty().say(true, "deep", "formed", "d"));

  private static final Slot<Boolean> QUIET =
      Slot.value("quiet", PhraseTable.<Boolean>empty().say(true, "quiet", "q"));

  private static final Slot<SegmentMethod> METHOD =
      Slot.condition(
          "technique",
          PhraseTable.of(SegmentMethod.class).say(SegmentMethod.SLIT_LAMP, "on slit lamp", "SLE"));

  private static final Slot<Boolean> SHALLOW =
      Slot.value("shallow", PhraseTable.<Boolean>empty().say(true, "shallow"));

  private static final Slot<Found> CELLS =
      Slot.value("cells", found("anterior chamber cells", "cells", "cell"));

  private static final Slot<Found> FLARE =
      Slot.value("flare", found("anterior chamber flare", "flare"));

  static final List<Grammar> GRAMMARS = grammars();

  static final List<Wording<?>> WORDINGS =
      List.of(
          wording(Segments.ANTERIOR, "anterior sign"),
          wording(Segments.POSTERIOR, "posterior sign"));

  private SegmentNotes() {}

  private static <S extends org.isopter.model.value.Concept> Wording<Segments.Sign<S>> wording(
      Finding<Segments.Sign<S>> finding, String heading) {
    return Wording.<Segments.Sign<S>>of(finding, heading, sign -> WrittenWords.of(sign.presence()))
        .under(sign -> WrittenWords.of(sign.sign()));
  }

  private static List<Grammar> grammars() {
    List<Grammar> all = new ArrayList<>();
    for (AnteriorSign sign : AnteriorSign.values()) {
      all.add(sign(Segments.ANTERIOR, sign, "anterior sign"));
    }
    for (PosteriorSign sign : PosteriorSign.values()) {
      all.add(sign(Segments.POSTERIOR, sign, "posterior sign"));
    }
    all.add(
        Grammar.of("cornea", "cornea R clear L clear")
            .startsWith("cornea")
            .startsWith(Stream.of(Heading.of("corneas").ofBothEyes()))
            .unsided((said, heading) -> heading.plural())
            .slots(CLEAR, OEDEMA, AMOUNT)
            .method(METHOD)
            .onClockFace()
            .build(SegmentNotes::cornea));
    all.add(
        Grammar.of("conjunctiva", "conjunctiva R red L white")
            .startsWith("conjunctiva", "conj")
            .slots(REDNESS, AMOUNT)
            .method(METHOD)
            .onClockFace()
            .build(
                eye -> {
                  Presence redness = eye.get(REDNESS);
                  eye.found(
                      Segments.ANTERIOR,
                      new Segments.Sign<>(AnteriorSign.CONJUNCTIVAL_REDNESS, redness));
                  remark(eye, redness);
                }));
    all.add(
        Grammar.of("lens", "lens R clear L clear")
            .startsWith("lens")
            .startsWith(Stream.of(Heading.of("lenses").ofBothEyes()))
            .unsided((said, heading) -> heading.plural())
            .slots(CLEAR, STATE, AMOUNT)
            .method(METHOD)
            .onClockFace()
            .build(SegmentNotes::lens));
    Stream.of("NS", "NSC", "PSC", "PSCO", "nuclear sclerosis")
        .map(SegmentNotes::opacity)
        .forEach(all::add);
    all.add(
        Grammar.of("anterior chamber", "AC R deep and quiet")
            .startsWith("AC")
            .startsWith(Stream.of(Heading.of("ACs").ofBothEyes()))
            .unsided((said, heading) -> heading.plural())
            .slots(DEEP, SHALLOW, QUIET, CELLS, FLARE)
            .method(METHOD)
            .onClockFace()
            .build(SegmentNotes::chamber));
    all.add(
        Grammar.of("retina", "retina R flat")
            .startsWith("retina", "periphery")
            .slots(FLAT)
            .method(METHOD)
            .onClockFace()
            .build(eye -> absent(eye, FLAT, Segments.POSTERIOR, PosteriorSign.RETINAL_DETACHMENT)));
    all.add(SignItems.unnamed(Segments.ANTERIOR, "anterior sign", Optional.of(METHOD)));
    all.add(SignItems.unnamed(Segments.POSTERIOR, "posterior sign", Optional.of(METHOD)));
    return List.copyOf(all);
  }

  /** Returns the item of an opacity of the lens that is called by its kind: NS R 2+ L 1+. */
  private static Grammar opacity(String kind) {
    return Grammar.of("opacity of the lens", kind + " R 2+ L 1+")
        .startsWith(Stream.of(Heading.of(kind).afterWords()))
        .slots(PRESENCE, AMOUNT)
        .method(METHOD)
        .onClockFace()
        .build(
            eye -> {
              if (eye.find(PRESENCE).equals(Optional.of(Presence.ABSENT))) {
                throw NotRead.because("another kind of opacity may be there");
              }
              eye.found(
                  Segments.ANTERIOR,
                  new Segments.Sign<>(AnteriorSign.LENS_OPACITY, Presence.PRESENT));
              eye.remark(eye.find(AMOUNT).map(amount -> amount + " " + kind).orElse(kind));
            });
  }

  private static <S extends org.isopter.model.value.Concept> Grammar sign(
      Finding<Segments.Sign<S>> finding, S sign, String lead) {
    return SignItems.named(sign, lead)
        .slots(PRESENCE, AMOUNT)
        .method(METHOD)
        .onClockFace()
        .unsided((said, heading) -> said.find(PRESENCE).equals(Optional.of(Presence.ABSENT)))
        .build(
            eye -> {
              Presence presence = eye.find(PRESENCE).orElse(Presence.PRESENT);
              eye.found(finding, new Segments.Sign<>(sign, presence));
              remark(eye, presence);
            });
  }

  private static void remark(Eye eye, Presence presence) throws NotRead {
    Optional<String> amount = eye.find(AMOUNT);
    if (amount.isPresent() && presence == Presence.ABSENT) {
      throw NotRead.because("it is absent, and yet an amount of it is said");
    }
    eye.remark(amount.orElse(""));
  }

  /** Reads a grade, a height in mm and words of amount: 2+, trace, 2 mm, 3+ NS. */
  private static Optional<String> amount(Cursor cursor) {
    List<String> words = new ArrayList<>();
    cursor.attempt(SegmentNotes::grade).ifPresent(words::add);
    Optional<String> word = cursor.attempt(AMOUNTS);
    while (word.isPresent()) {
      word.ifPresent(words::add);
      word = cursor.attempt(SegmentNotes::further);
    }
    if (!words.isEmpty()) {
      cursor.attempt(SegmentNotes::grade).ifPresent(words::add);
      cursor.attempt(AMOUNTS).ifPresent(words::add);
    }
    return Optional.of(String.join(" ", words)).filter(some -> !some.isEmpty());
  }

  private static Optional<String> further(Cursor cursor) {
    cursor.takeAny("and", "/");
    return AMOUNTS.read(cursor);
  }

  private static Optional<String> grade(Cursor cursor) {
    Optional<String> named =
        cursor.attempt(Common::namedGrade).or(() -> cursor.attempt(Common::pluses));
    if (named.isPresent()) {
      return named;
    }
    cursor.take("at");
    Optional<BigDecimal> number = cursor.number();
    boolean plus = cursor.take("+");
    boolean millimetres = !plus && cursor.take("mm");
    boolean hour = !plus && !millimetres && cursor.take("o'clock");
    String unit = plus ? "+" : hour ? " o'clock" : " mm";
    return number.filter(any -> plus || millimetres || hour).map(found -> found + unit);
  }

  private static void cornea(Eye eye) throws NotRead {
    if (!eye.has(OEDEMA)) {
      absent(
          eye, CLEAR, Segments.ANTERIOR, AnteriorSign.CORNEAL_OPACITY, AnteriorSign.CORNEAL_OEDEMA);
      return;
    }
    if (eye.has(CLEAR)) {
      throw NotRead.because("the cornea is clear, and yet swollen");
    }
    eye.found(
        Segments.ANTERIOR, new Segments.Sign<>(AnteriorSign.CORNEAL_OEDEMA, Presence.PRESENT));
    eye.remark(eye.find(AMOUNT).orElse(""));
  }

  /** Adds what is said of a lens: a grade of sclerosis is an opacity. */
  private static void lens(Eye eye) throws NotRead {
    Optional<String> amount = eye.find(AMOUNT);
    boolean opacity =
        amount.filter(words -> words.matches(".*(NS|NSC|PSC|cortical).*")).isPresent();
    if (eye.has(CLEAR)) {
      if (amount.isPresent() || eye.has(STATE)) {
        throw NotRead.because("the lens is clear, and yet more is said of it");
      }
      absent(eye, CLEAR, Segments.ANTERIOR, AnteriorSign.LENS_OPACITY);
      return;
    }
    AnteriorSign sign = opacity && !eye.has(STATE) ? AnteriorSign.LENS_OPACITY : eye.get(STATE);
    eye.found(Segments.ANTERIOR, new Segments.Sign<>(sign, Presence.PRESENT));
    eye.remark(amount.orElse(""));
  }

  /** Reads no cells, cells 1+, 2+ cell, flare trace; a name alone does not say how much. */
  private static Matcher<Found> found(String... names) {
    List<List<String>> phrases = Stream.of(names).map(Lexer::words).toList();
    return cursor -> {
      boolean no = cursor.takeAny("no", "nil", "0");
      Optional<String> before = no ? Optional.empty() : cursor.attempt(SegmentNotes::amount);
      boolean named = phrases.stream().anyMatch(cursor::take);
      boolean denied = no || (named && before.isEmpty() && cursor.takeAny("absent", "nil", "0"));
      Optional<String> amount =
          denied || before.isPresent() ? before : cursor.attempt(SegmentNotes::amount);
      return Optional.of(new Found(denied ? Presence.ABSENT : Presence.PRESENT, amount.orElse("")))
          .filter(any -> named && (denied || amount.isPresent()));
    };
  }

  private static void found(Eye eye, Slot<Found> slot, AnteriorSign sign) throws NotRead {
    Optional<Found> found = eye.find(slot);
    if (found.isPresent()) {
      eye.found(Segments.ANTERIOR, new Segments.Sign<>(sign, found.get().presence()));
      eye.remark(found.get().amount());
    }
  }

  private static void chamber(Eye eye) throws NotRead {
    if (eye.has(DEEP) && eye.has(SHALLOW)) {
      throw NotRead.because("the chamber is deep, and yet shallow");
    }
    if (eye.has(QUIET) && (eye.has(CELLS) || eye.has(FLARE))) {
      throw NotRead.because("the chamber is quiet, and yet cells or flare are told apart");
    }
    if (eye.has(SHALLOW)) {
      eye.found(
          Segments.ANTERIOR,
          new Segments.Sign<>(AnteriorSign.SHALLOW_ANTERIOR_CHAMBER, Presence.PRESENT));
    }
    found(eye, CELLS, AnteriorSign.ANTERIOR_CHAMBER_CELLS);
    found(eye, FLARE, AnteriorSign.ANTERIOR_CHAMBER_FLARE);
    if (eye.has(DEEP)) {
      absent(eye, DEEP, Segments.ANTERIOR, AnteriorSign.SHALLOW_ANTERIOR_CHAMBER);
    }
    if (eye.has(QUIET)) {
      absent(
          eye,
          QUIET,
          Segments.ANTERIOR,
          AnteriorSign.ANTERIOR_CHAMBER_CELLS,
          AnteriorSign.ANTERIOR_CHAMBER_FLARE);
    }
  }

  @SafeVarargs
  private static <S> void absent(
      Eye eye, Slot<Boolean> slot, Finding<Segments.Sign<S>> finding, S... signs) throws NotRead {
    eye.get(slot);
    for (S sign : signs) {
      eye.found(finding, new Segments.Sign<>(sign, Presence.ABSENT));
    }
  }
}
