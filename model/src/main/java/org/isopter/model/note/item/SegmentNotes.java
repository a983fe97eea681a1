package org.isopter.model.note.item;

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
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Vocabulary;
import org.isopter.model.note.token.Words;

/** Signs of the front and of the back of the eye. */
final class SegmentNotes {

  private static final Slot<Presence> PRESENCE =
      Slot.value(
          "presence",
          Vocabulary.of(Presence.class)
              .say(Presence.PRESENT, "+", "yes")
              .say(Presence.ABSENT, "no", "none", "nil", "without", "-"));

  private static final Slot<Boolean> CLEAR =
      Slot.value("clear", Vocabulary.<Boolean>empty().say(true, "clear"));

  private static final Slot<Boolean> FLAT =
      Slot.value("flat", Vocabulary.<Boolean>empty().say(true, "flat", "attached"));

  private static final Slot<Boolean> DEEP =
      Slot.value("depth", Vocabulary.<Boolean>empty().say(true, "deep", "formed"));

  private static final Slot<Boolean> QUIET =
      Slot.value("quiet", Vocabulary.<Boolean>empty().say(true, "quiet"));

  private static final Slot<SegmentMethod> METHOD =
      Slot.condition(
          "technique",
          Vocabulary.of(SegmentMethod.class).say(SegmentMethod.SLIT_LAMP, "on slit lamp", "SLE"));

  static final List<Grammar> GRAMMARS = grammars();

  static final List<Wording<?>> WORDINGS =
      List.of(
          wording(Segments.ANTERIOR, "anterior sign"),
          wording(Segments.POSTERIOR, "posterior sign"));

  private SegmentNotes() {}

  private static <S extends org.isopter.model.value.Concept> Wording<Segments.Sign<S>> wording(
      Finding<Segments.Sign<S>> finding, String heading) {
    return Wording.<Segments.Sign<S>>of(finding, heading, sign -> Words.of(sign.presence()))
        .under(sign -> Words.of(sign.sign()));
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
            .slots(CLEAR)
            .method(METHOD)
            .build(
                eye ->
                    absent(
                        eye,
                        CLEAR,
                        Segments.ANTERIOR,
                        AnteriorSign.CORNEAL_OPACITY,
                        AnteriorSign.CORNEAL_OEDEMA)));
    all.add(
        Grammar.of("lens", "lens R clear L clear")
            .startsWith("lens", "lenses")
            .slots(CLEAR)
            .method(METHOD)
            .build(eye -> absent(eye, CLEAR, Segments.ANTERIOR, AnteriorSign.LENS_OPACITY)));
    all.add(
        Grammar.of("anterior chamber", "AC R deep and quiet")
            .startsWith("AC")
            .slots(DEEP, QUIET)
            .method(METHOD)
            .build(SegmentNotes::chamber));
    all.add(
        Grammar.of("retina", "retina R flat")
            .startsWith("retina", "periphery")
            .slots(FLAT)
            .method(METHOD)
            .build(eye -> absent(eye, FLAT, Segments.POSTERIOR, PosteriorSign.RETINAL_DETACHMENT)));
    all.add(notExamined(Segments.ANTERIOR, "anterior sign"));
    all.add(notExamined(Segments.POSTERIOR, "posterior sign"));
    return List.copyOf(all);
  }

  private static Grammar notExamined(Finding<?> finding, String heading) {
    return Grammar.of(heading, heading + " R not done")
        .startsWith(heading)
        .method(METHOD)
        .whole(finding)
        .build(
            eye -> {
              throw NotRead.because("it is not told which sign");
            });
  }

  private static <S extends org.isopter.model.value.Concept> Grammar sign(
      Finding<Segments.Sign<S>> finding, S sign, String lead) {
    String name = sign.word().replace('-', ' ');
    return Grammar.of(name, name + " R present L absent")
        .startsWith(Stream.of(Heading.of(name).afterWords(), Heading.of(lead + " " + name)))
        .slots(PRESENCE)
        .method(METHOD)
        .unsided((said, heading) -> said.find(PRESENCE).equals(Optional.of(Presence.ABSENT)))
        .build(
            eye ->
                eye.found(
                    finding,
                    new Segments.Sign<>(sign, eye.find(PRESENCE).orElse(Presence.PRESENT))));
  }

  private static void chamber(Eye eye) throws NotRead {
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
