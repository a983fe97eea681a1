package org.isopter.model.letter;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.PosteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.exam.Exam;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/**
 * A published list of urgent findings, as far as a record can hold them. It is consulted only when
 * asked for by name; what is not listed may be just as urgent.
 */
public enum UrgencyRules {
  /** The list of the College of Optometrists in the United Kingdom. */
  UK_C205(
      "uk-c205",
      "College of Optometrists (United Kingdom), \"Urgency of referrals\", C205: emergency, within"
          + " 24 hours") {
    @Override
    public List<String> hints(Exam exam) {
      return Stream.of(
              swollenDiscs(exam),
              thirdNerve(exam),
              pressure(exam),
              front(exam, AnteriorSign.HYPHAEMA, "Hyphaema"),
              front(exam, AnteriorSign.HYPOPYON, "Hypopyon"),
              back(exam, PosteriorSign.RETINAL_DETACHMENT, "Retinal detachment"),
              back(exam, PosteriorSign.RETINAL_TEAR, "A retinal tear, when it gives symptoms,"))
          .flatMap(Optional::stream)
          .toList();
    }
  };

  private static final BigDecimal HIGH_PRESSURE = BigDecimal.valueOf(40);

  private final String word;
  private final String source;

  UrgencyRules(String word, String source) {
    this.word = word;
    this.source = source;
  }

  /** Returns the name by which the list is asked for. */
  public String word() {
    return word;
  }

  /** Returns the name by which the list is asked for. */
  @Override
  public String toString() {
    return word;
  }

  /** Returns where the list comes from, where it holds, and that it decides nothing. */
  public String about() {
    return source
        + ". Only rows that a record can show are looked at; elsewhere other lists hold. It is no"
        + " triage: the referring clinician and local protocols decide.";
  }

  /** Returns what of the examination is on the list, in sentences. */
  public abstract List<String> hints(Exam exam);

  private static Optional<String> swollenDiscs(Exam exam) {
    boolean both =
        Site.EACH_EYE.stream()
            .allMatch(
                eye ->
                    exam.all(Discs.SWELLING).at(eye).values().stream()
                        .anyMatch(disc -> disc.presence() == Presence.PRESENT));
    return hint(both, "Swollen discs in both eyes are on the list; blood pressure first.");
  }

  private static Optional<String> thirdNerve(Exam exam) {
    boolean lid =
        exam.all(Lids.PTOSIS).values().stream().anyMatch(p -> p.presence() == Presence.PRESENT);
    boolean seesDouble =
        exam.all(Movements.DIPLOPIA).values().stream()
            .anyMatch(d -> d.kind() == DoubleVision.BINOCULAR);
    List<String> beside = new ArrayList<>();
    if (lid) {
      beside.add("a low upper lid");
    }
    if (seesDouble) {
      beside.add("double vision");
    }
    return hint(
        areUnequal(exam) && !beside.isEmpty(),
        "Unequal pupils with "
            + PlainWords.list(beside)
            + " are on the list when they are new and painful; the record does not say in a form"
            + " that can be read here whether they are.");
  }

  private static boolean areUnequal(Exam exam) {
    boolean judged =
        exam.all(Pupils.EQUALITY).values().stream().anyMatch(p -> p != PupilEquality.EQUAL);
    return judged || Stream.of(Lighting.values()).anyMatch(light -> differIn(exam, light));
  }

  private static boolean differIn(Exam exam, Lighting light) {
    return size(exam, Site.RIGHT, light)
        .flatMap(right -> size(exam, Site.LEFT, light).map(left -> right.compareTo(left) != 0))
        .orElse(false);
  }

  private static Optional<BigDecimal> size(Exam exam, Site eye, Lighting light) {
    return exam.all(Pupils.SIZE).at(eye).values().stream()
        .filter(size -> size.lighting() == light)
        .map(size -> size.diameter().value())
        .findFirst();
  }

  private static Optional<String> pressure(Exam exam) {
    List<String> eyes =
        Site.EACH_EYE.stream()
            .filter(
                eye ->
                    exam.all(Pressures.INTRAOCULAR).at(eye).values().stream()
                        .anyMatch(UrgencyRules::isHigh))
            .map(PlainWords::eye)
            .toList();
    return hint(
        !eyes.isEmpty(),
        "An intraocular pressure of 40 mmHg or more is on the list: "
            + PlainWords.list(eyes)
            + ".");
  }

  private static Optional<String> front(Exam exam, AnteriorSign sign, String words) {
    return sign(words, eye -> isThere(exam.all(Segments.ANTERIOR).at(eye).values(), sign));
  }

  private static Optional<String> back(Exam exam, PosteriorSign sign, String words) {
    return sign(words, eye -> isThere(exam.all(Segments.POSTERIOR).at(eye).values(), sign));
  }

  /** A sign that is doubtful is on the list as well. */
  private static <S> boolean isThere(List<Segments.Sign<S>> seen, S sign) {
    return seen.stream().anyMatch(one -> one.sign() == sign && one.presence() != Presence.ABSENT);
  }

  private static Optional<String> sign(String words, Predicate<Site> there) {
    List<String> eyes = Site.EACH_EYE.stream().filter(there).map(PlainWords::eye).toList();
    return hint(!eyes.isEmpty(), words + " is on the list: " + PlainWords.list(eyes) + ".");
  }

  private static boolean isHigh(Quantity pressure) {
    return pressure.value().compareTo(HIGH_PRESSURE) >= 0;
  }

  private static Optional<String> hint(boolean holds, String text) {
    return holds ? Optional.of(text) : Optional.empty();
  }
}
