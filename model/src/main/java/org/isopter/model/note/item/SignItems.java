package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Concept;

/** Signs of a list or of a disc, each an item under its own name: it is there, or it is not. */
final class SignItems {

  private static final PhraseTable<Presence> SIGNS =
      PhraseTable.of(Presence.class)
          .say(Presence.PRESENT, "+", "yes", "positive", "+ve")
          .say(Presence.ABSENT, "-", "no", "none", "negative", "nil", "without", "-ve", "neg");

  /** Whether the sign that the heading names is there; beside an eye its name says that it is. */
  private static final Slot<Presence> NAMED = Slot.value("presence", SignItems::sign);

  /** That a haemorrhage is there besides: papilloedema R with haemorrhage. */
  private static final Slot<Boolean> WITH_BLOOD =
      Slot.value("haemorrhage besides", SignItems::beforeBlood);

  /** The signs of a disc, and its margin. */
  static final List<Grammar> OF_DISC =
      List.of(
          signOfDisc("spontaneous venous pulsation", "SVP R present L absent")
              .startsWith(
                  Stream.of("SVP", "spontaneous venous pulsation")
                      .map(Heading::of)
                      .map(Heading::afterWords))
              .whole(Discs.VENOUS_PULSATION)
              .build(eye -> eye.found(Discs.VENOUS_PULSATION, eye.get(NAMED))),
          Grammar.of("margin of the disc", "disc margin R sharp L blurred all round")
              .startsWith("disc margin", "disc margins")
              .slots(
                  DiscNotes.MARGIN,
                  DiscNotes.COLOUR,
                  DiscNotes.SWELLING,
                  DiscNotes.HAEMORRHAGE,
                  DiscNotes.CLOCK_HOUR,
                  DiscNotes.PULSATION)
              .method(DiscNotes.METHOD)
              .onClockFace()
              .whole(Discs.MARGIN)
              .build(
                  eye -> {
                    eye.outcome(Discs.MARGIN, eye.get(DiscNotes.MARGIN));
                    besides(eye);
                  }),
          signOfDisc("swelling of the disc", "disc swelling R present L absent")
              .startsWith(Stream.of(Heading.of("disc swelling").afterWords()))
              .slots(
                  DiscNotes.NORMAL,
                  DiscNotes.COLOUR,
                  DiscNotes.MARGIN,
                  DiscNotes.FRISEN,
                  DiscNotes.HAEMORRHAGE,
                  DiscNotes.CLOCK_HOUR,
                  DiscNotes.PULSATION)
              .slots(WITH_BLOOD, Common.DEGREE)
              .whole(Discs.SWELLING)
              .build(SignItems::swelling),
          signOfDisc("haemorrhage of the disc", "disc haemorrhage R present L absent")
              .startsWith(Stream.of(Heading.of("disc haemorrhage").afterWords()))
              .slots(
                  DiscNotes.NORMAL,
                  DiscNotes.COLOUR,
                  DiscNotes.MARGIN,
                  DiscNotes.SWELLING,
                  DiscNotes.CLOCK_HOUR,
                  DiscNotes.PULSATION)
              .whole(Discs.HAEMORRHAGE)
              .build(SignItems::haemorrhage));

  private SignItems() {}

  /** Returns the start of the item of one sign; the name of its list may stand before its own. */
  static Grammar.Draft named(Concept sign, String list) {
    String name = WrittenWords.of(sign);
    return Grammar.of(name, name + " R present L absent")
        .startsWith(Stream.of(Heading.of(name).afterWords(), Heading.of(list + " " + name)));
  }

  /** Returns the item of a whole list; it can only say why none of its signs was looked for. */
  static Grammar unnamed(
      Finding<?> finding, String list, Optional<? extends Slot<? extends Concept>> technique) {
    Grammar.Draft draft = Grammar.of(list, list + " R not done").startsWith(list).whole(finding);
    technique.ifPresent(draft::method);
    return draft.build(
        eye -> {
          throw NotRead.because("it is not said which sign");
        });
  }

  /** Begins the item of a sign: denied without a side, it is denied of both eyes. */
  private static Grammar.Draft signOfDisc(String name, String example) {
    return Grammar.of(name, example)
        .slots(NAMED)
        .method(DiscNotes.METHOD)
        .onClockFace()
        .unsided((said, heading) -> said.find(NAMED).equals(Optional.of(Presence.ABSENT)));
  }

  /** Reads whether a sign is there; a dash before anything else may be no more than a dash. */
  private static Optional<Presence> sign(Cursor cursor) {
    boolean dash = cursor.sees("-");
    Optional<Presence> sign = SIGNS.read(cursor);
    boolean other = sign.isPresent() && cursor.attempt(Common.SIDES).isPresent();
    boolean ends = cursor.atEnd() || cursor.sees(",") || (other && cursor.sees("+"));
    cursor.back(other ? cursor.place() - 1 : cursor.place());
    return sign.filter(any -> !dash || ends);
  }

  private static Optional<Boolean> beforeBlood(Cursor cursor) {
    boolean joint = !cursor.atEnd() && Common.isConnector(cursor.token());
    cursor.back(cursor.place() + (joint ? 1 : 0));
    int blood = cursor.place();
    boolean there =
        joint && cursor.attempt(DiscNotes.HAEMORRHAGES).equals(Optional.of(Presence.PRESENT));
    cursor.back(blood);
    return Optional.of(true).filter(any -> there);
  }

  /** Returns whether the sign is there; what else is said of an eye may be all that is meant. */
  private static Presence presence(Eye eye) throws NotRead {
    boolean besides = eye.has(WITH_BLOOD) || eye.isSetOff(DiscNotes.HAEMORRHAGE);
    boolean blood = eye.has(DiscNotes.HAEMORRHAGE) && !besides;
    boolean more =
        Stream.of(DiscNotes.COLOUR, DiscNotes.MARGIN, DiscNotes.SWELLING, DiscNotes.PULSATION)
            .anyMatch(eye::has);
    return blood || more ? eye.get(NAMED) : eye.find(NAMED).orElse(Presence.PRESENT);
  }

  private static void swelling(Eye eye) throws NotRead {
    if (eye.has(DiscNotes.NORMAL) && !eye.has(NAMED)) {
      DiscNotes.disc(eye);
      return;
    }
    Presence presence = presence(eye);
    eye.found(Discs.SWELLING, new Discs.Swelling(presence, eye.find(DiscNotes.FRISEN)));
    eye.degree(presence == Presence.PRESENT);
    eye.outcomeOf(Discs.MARGIN, DiscNotes.MARGIN);
    besides(eye);
  }

  private static void haemorrhage(Eye eye) throws NotRead {
    if (eye.has(DiscNotes.NORMAL) && !eye.has(NAMED)) {
      DiscNotes.disc(eye);
      return;
    }
    eye.found(
        Discs.HAEMORRHAGE, new Discs.Haemorrhage(presence(eye), eye.find(DiscNotes.CLOCK_HOUR)));
    eye.outcomeOf(Discs.MARGIN, DiscNotes.MARGIN);
    besides(eye);
  }

  /** Adds what else is said of a disc behind the name of a part or sign of it. */
  private static void besides(Eye eye) throws NotRead {
    eye.outcomeOf(Discs.COLOUR, DiscNotes.COLOUR);
    if (eye.has(DiscNotes.SWELLING)) {
      eye.outcome(
          Discs.SWELLING,
          eye.get(DiscNotes.SWELLING).map(sign -> new Discs.Swelling(sign, Optional.empty())));
    }
    if (eye.has(DiscNotes.HAEMORRHAGE)) {
      Optional<Integer> hour = eye.find(DiscNotes.CLOCK_HOUR);
      eye.outcome(
          Discs.HAEMORRHAGE,
          eye.get(DiscNotes.HAEMORRHAGE).map(sign -> new Discs.Haemorrhage(sign, hour)));
    }
    eye.outcomeOf(Discs.VENOUS_PULSATION, DiscNotes.PULSATION);
  }
}
