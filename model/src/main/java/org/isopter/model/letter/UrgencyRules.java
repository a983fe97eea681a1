package org.isopter.model.letter;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.PosteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Quantity;

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
    public List<String> hints(Exam examination) {
      ExamView exam = ExamView.of(examination);
      return Stream.concat(signs(exam).flatMap(Optional::stream), UrgentWhenNew.of(exam)).toList();
    }
  };

  private static final BigDecimal HIGH_PRESSURE = BigDecimal.valueOf(40);

  /** Above the pressures of a usual eye, in mmHg (common practice, no source). */
  private static final BigDecimal RAISED_PRESSURE = BigDecimal.valueOf(30);

  private static final Set<PupilResponse> SLOW =
      Set.of(PupilResponse.SLUGGISH, PupilResponse.ABSENT);

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
    return source + ". No triage, and only what a record can show; elsewhere other lists hold.";
  }

  /** Returns what of the examination is on the list, in sentences. */
  public abstract List<String> hints(Exam examination);

  private static Stream<Optional<String>> signs(ExamView exam) {
    return Stream.of(
        swollenDiscs(exam),
        pressure(exam),
        angleClosure(exam),
        front(exam, AnteriorSign.HYPHAEMA, "Hyphaema"),
        front(exam, AnteriorSign.HYPOPYON, "Hypopyon"),
        keratitis(exam),
        sign(
            exam,
            "Uveitis, of which cells or flare in the anterior chamber may be a sign,",
            eye ->
                has(eye, AnteriorSign.ANTERIOR_CHAMBER_CELLS)
                    || has(eye, AnteriorSign.ANTERIOR_CHAMBER_FLARE)),
        back(exam, PosteriorSign.RETINAL_DETACHMENT, "Retinal detachment"),
        back(exam, PosteriorSign.RETINAL_TEAR, "A retinal tear, when it gives symptoms,"),
        back(
            exam,
            PosteriorSign.CHERRY_RED_SPOT,
            "A closed central retinal artery, of which a cherry-red spot may be a sign, in its"
                + " first 12 hours"));
  }

  /** A swelling that is doubtful is on the list as well, and so is one whose fellow is unknown. */
  private static Optional<String> swollenDiscs(ExamView exam) {
    List<EyeView> swollen =
        exam.eyes().filter(eye -> eye.has(Discs.SWELLING, UrgencyRules::isNotExcluded)).toList();
    if (swollen.size() == 2) {
      boolean sure = swollen.stream().allMatch(UrgencyRules::isSwollen);
      return Optional.of(
          "Swollen discs in both eyes are on the list"
              + (sure ? "" : ", and here the swelling is doubtful")
              + "; blood pressure first.");
    }
    return swollen.stream()
        .filter(eye -> !eye.fellow().has(Discs.SWELLING, any -> true))
        .map(UrgencyRules::oneSwollenDisc)
        .findFirst();
  }

  private static String oneSwollenDisc(EyeView eye) {
    return "A swollen disc is on the list where the other is swollen too: "
        + PlainWords.eye(eye.site())
        + "; the record does not say whether the other is.";
  }

  private static boolean isSwollen(EyeView eye) {
    return eye.has(Discs.SWELLING, disc -> disc.presence() == Presence.PRESENT);
  }

  private static boolean isNotExcluded(Discs.Swelling disc) {
    return disc.presence() != Presence.ABSENT;
  }

  private static Optional<String> pressure(ExamView exam) {
    return eyes(exam, eye -> reaches(eye, HIGH_PRESSURE))
        .map(eyes -> "An intraocular pressure of 40 mmHg or more is on the list: " + eyes + ".");
  }

  private static Optional<String> angleClosure(ExamView exam) {
    return sign(
        exam,
        "Acute closure of the angle, of which a swollen cornea with a shallow chamber, or with 30"
            + " mmHg and a pupil that hardly moves, may be a sign,",
        eye ->
            has(eye, AnteriorSign.CORNEAL_OEDEMA)
                && (has(eye, AnteriorSign.SHALLOW_ANTERIOR_CHAMBER) || isHardAndFixed(eye)));
  }

  private static boolean isHardAndFixed(EyeView eye) {
    return reaches(eye, RAISED_PRESSURE) && eye.has(Pupils.DIRECT, SLOW::contains);
  }

  private static Optional<String> keratitis(ExamView exam) {
    return sign(
        exam,
        "Microbial keratitis, of which an epithelial defect on an opaque cornea may be a sign,",
        eye ->
            has(eye, AnteriorSign.CORNEAL_EPITHELIAL_DEFECT)
                && has(eye, AnteriorSign.CORNEAL_OPACITY));
  }

  private static Optional<String> front(ExamView exam, AnteriorSign sign, String words) {
    return sign(exam, words, eye -> has(eye, sign));
  }

  private static boolean has(EyeView eye, AnteriorSign sign) {
    return eye.has(Segments.ANTERIOR, one -> isThere(one, sign));
  }

  private static Optional<String> back(ExamView exam, PosteriorSign sign, String words) {
    return sign(exam, words, eye -> eye.has(Segments.POSTERIOR, one -> isThere(one, sign)));
  }

  /** A sign that is doubtful is on the list as well. */
  private static <S> boolean isThere(Segments.Sign<S> seen, S sign) {
    return seen.sign() == sign && seen.presence() != Presence.ABSENT;
  }

  private static Optional<String> sign(ExamView exam, String words, Predicate<EyeView> there) {
    return eyes(exam, there).map(eyes -> words + " is on the list: " + eyes + ".");
  }

  private static Optional<String> eyes(ExamView exam, Predicate<EyeView> which) {
    List<String> eyes = exam.eyes().filter(which).map(eye -> PlainWords.eye(eye.site())).toList();
    return eyes.isEmpty() ? Optional.empty() : Optional.of(PlainWords.list(eyes));
  }

  /** A pressure above the end of a scale that reaches so far is as high at least. */
  private static boolean reaches(EyeView eye, BigDecimal least) {
    return eye.has(Pressures.INTRAOCULAR, pressure -> reaches(pressure, least))
        || eye.has(Pressures.BEYOND, past -> past.isAbove() && reaches(past.limit(), least));
  }

  private static boolean reaches(Quantity pressure, BigDecimal least) {
    return pressure.value().compareTo(least) >= 0;
  }
}
