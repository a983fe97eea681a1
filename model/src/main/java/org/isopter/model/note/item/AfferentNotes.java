package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.AfferentTest;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.catalogue.Pupils;
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
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;

/** The relative afferent defect of the pupils. */
final class AfferentNotes {

  private static final PhraseTable<DefectGrade> GRADES = PhraseTable.of(DefectGrade.class);

  private static final PhraseTable<Boolean> DEFECTS =
      PhraseTable.<Boolean>empty()
          .say(false, "none", "no", "nil", "absent", "negative", "-", "neg", "-ve", "without")
          .say(true, "present", "positive", "+", "pos", "+ve");

  private static final PhraseTable<Boolean> DOUBTS =
      PhraseTable.<Boolean>empty().say(true, "equivocal", "uncertain", "doubtful");

  private static final Slot<Boolean> DEFECT = Slot.value("presence", DEFECTS);
  private static final Slot<Boolean> DOUBT = Slot.value("doubt", DOUBTS);
  private static final Slot<AfferentTest> TEST =
      Slot.condition(
          "test",
          PhraseTable.of(AfferentTest.class).say(AfferentTest.REVERSE, "reverse test", "reversed"));
  private static final Slot<DefectGrade> GRADE = Slot.value("grade", GRADES);
  private static final Slot<BigDecimal> LOG = Slot.value("log units", AfferentNotes::logUnits);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("relative afferent defect", "RAPD L 2+")
              .sides(Grammar.Sides.NAMED)
              .startsWith(
                  Stream.of(
                          "RAPD",
                          "APD",
                          "relative afferent pupillary defect",
                          "afferent pupillary defect",
                          "relative afferent defect",
                          "afferent defect")
                      .map(Heading::of)
                      .map(Heading::afterWords))
              .slots(DEFECT, DOUBT, GRADE, LOG, Common.DEGREE)
              .method(TEST)
              .whole(Pupils.AFFERENT_DEFECT)
              .unsided(
                  (said, heading) ->
                      said.find(DEFECT).equals(Optional.of(false)) || said.has(DOUBT))
              .build(
                  eye -> {
                    eye.found(Pupils.AFFERENT_DEFECT, defect(eye));
                    eye.degree(!eye.find(DEFECT).equals(Optional.of(false)) && !eye.has(DOUBT));
                  }));

  static final List<Wording<?>> WORDINGS =
      List.of(Wording.of(Pupils.AFFERENT_DEFECT, "RAPD", AfferentNotes::words));

  private AfferentNotes() {}

  private static Optional<BigDecimal> logUnits(Cursor cursor) {
    Optional<BigDecimal> number = cursor.number().filter(n -> cursor.take("log"));
    cursor.takeAny("units", "unit");
    return number;
  }

  private static Pupils.AfferentDefect defect(Eye eye) throws NotRead {
    boolean none = eye.find(DEFECT).equals(Optional.of(false));
    if (eye.has(DOUBT)) {
      if (eye.has(DEFECT) || eye.has(GRADE) || eye.has(LOG)) {
        throw NotRead.because("an equivocal defect is neither there nor graded");
      }
      return new Pupils.AfferentDefect(
          DefectSide.EQUIVOCAL, Optional.empty(), Optional.empty(), suspected(eye.named()));
    }
    if (none && eye.named().isPresent()) {
      throw NotRead.because("no defect is said of both eyes together: leave the side out")
          .write("no RAPD");
    }
    DefectSide side =
        none
            ? DefectSide.NONE
            : eye.named().equals(Optional.of(Site.RIGHT)) ? DefectSide.RIGHT : DefectSide.LEFT;
    return new Pupils.AfferentDefect(side, eye.find(GRADE), eye.find(LOG));
  }

  private static Optional<Term> suspected(Optional<Site> eye) {
    return eye.flatMap(Pupils::suspectedEye);
  }

  private static String suspected(Term eye) {
    return eye.word().equals("right") ? "R " : "L ";
  }

  private static String words(Pupils.AfferentDefect defect) {
    String side =
        switch (defect.side()) {
          case NONE -> "none";
          case RIGHT -> "R";
          case LEFT -> "L";
          case EQUIVOCAL ->
              defect.suspected().map(AfferentNotes::suspected).orElse("") + "equivocal";
        };
    return WrittenWords.join(
        side,
        WrittenWords.maybe(defect.grade(), GRADES::phrase),
        WrittenWords.maybe(defect.logUnits(), number -> number.toPlainString() + " log units"));
  }
}
