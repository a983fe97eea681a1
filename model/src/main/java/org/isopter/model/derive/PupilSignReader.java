package org.isopter.model.derive;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilFeature;
import org.isopter.model.answer.pupil.PupilOutline;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.answer.pupil.Sweating;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.pupil.PupilSign;
import org.isopter.model.clinical.pupil.PupilSigns;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/** Reads the signs that the table of causes asks for from the facts of an examination. */
final class PupilSignReader {

  private static final Set<String> SOME_RESPONSE = Set.of("brisk", "sluggish", "tonic");

  private final ExamView exam;
  private final PupilSizes sizes;
  private final List<Seen<?>> used = new ArrayList<>();
  private final Map<PupilSigns.Key, PupilSigns.Seen> signs = new LinkedHashMap<>();

  private PupilSignReader(ExamView exam, PupilPairs pairs) {
    this.exam = exam;
    this.sizes = new PupilSizes(exam, pairs);
  }

  /** The signs, and the facts that they were read from. */
  record Read(PupilSigns signs, List<Seen<?>> used) {}

  static Read of(ExamView exam, PupilPairs pairs) {
    PupilSignReader reader = new PupilSignReader(exam, pairs);
    reader.unequal();
    exam.eyes().forEach(reader::eye);
    reader.lit();
    reader.pair();
    return new Read(new PupilSigns(reader.signs), reader.used);
  }

  private void eye(EyeView eye) {
    response(eye, Pupils.DIRECT, PupilSign.DIRECT);
    response(eye, Pupils.CONSENSUAL, PupilSign.CONSENSUAL);
    response(eye, Pupils.NEAR, PupilSign.NEAR);
    size(eye);
    one(
        eye,
        Pupils.OUTLINE,
        PupilSign.OUTLINE,
        shape -> shape.word(),
        shape -> Set.of(shape == PupilOutline.ROUND ? "round" : "odd"));
    eye.seen(Pupils.FEATURE).forEach(this::feature);
    one(eye, Lids.PTOSIS, PupilSign.LID, PupilSignReader::lidWords, PupilSignReader::lid);
    one(eye, Movements.DUCTIONS, PupilSign.MOVEMENT, MovedWords::said, MovedWords.of(eye.site()));
    EyeSigns.pressure(eye).ifPresent(found -> put(PupilSign.PRESSURE, eye.site(), found));
    EyeSigns.front(eye).ifPresent(found -> put(PupilSign.FRONT, eye.site(), found));
    one(
        eye,
        Lids.SWEATING,
        PupilSign.SWEATING,
        Sweating::word,
        sweat -> Set.of(sweat == Sweating.NORMAL ? "normal" : "less"));
    eye.seen(Drops.TEST).forEach(this::drug);
  }

  private <V> void one(
      EyeView eye,
      Finding<V> finding,
      PupilSign sign,
      Function<V, String> said,
      Function<V, Set<String>> words) {
    List<Seen<V>> all = eye.seen(finding).toList();
    Set<String> found = new LinkedHashSet<>();
    Set<String> texts = new LinkedHashSet<>();
    all.forEach(seen -> found.addAll(words.apply(seen.value())));
    all.forEach(seen -> texts.add(said.apply(seen.value())));
    if (!found.isEmpty()) {
      put(sign, eye.site(), String.join(" or ", texts), found, List.copyOf(all));
    }
  }

  private void put(PupilSign sign, Site site, PupilSizes.Found found) {
    put(sign, site, found.said(), found.words(), found.from());
  }

  private void put(PupilSign sign, Site site, String said, Set<String> words, List<Seen<?>> facts) {
    String eye = site == Site.BOTH ? "" : site.word() + " ";
    Set<String> all = new LinkedHashSet<>(words);
    PupilSigns.Key key = new PupilSigns.Key(sign, sign.isOfThePair() ? Site.BOTH : site);
    // What was judged twice may be as it was judged either time.
    Optional.ofNullable(signs.get(key)).ifPresent(before -> all.addAll(before.words()));
    signs.put(key, new PupilSigns.Seen(all, eye + sign.title() + " " + said));
    used.addAll(facts);
  }

  private void response(EyeView eye, Finding<PupilResponse> finding, PupilSign sign) {
    // A pupil that answers, nobody said how briskly, may be any that is not without an answer.
    one(
        eye,
        finding,
        sign,
        PupilResponse::word,
        seen -> seen == PupilResponse.REACTIVE ? SOME_RESPONSE : Set.of(seen.word()));
  }

  /** Hippus tells nothing: healthy pupils have it too. */
  private static final Map<PupilFeature, PupilSign> FEATURES =
      Map.of(
          PupilFeature.DILATION_LAG, PupilSign.DILATION_LAG,
          PupilFeature.SEGMENTAL_MOVEMENT, PupilSign.SEGMENTAL_MOVEMENT,
          PupilFeature.CORECTOPIA, PupilSign.CORECTOPIA);

  private void feature(Seen<Pupils.Feature> seen) {
    Presence presence = seen.value().presence();
    Set<String> words =
        presence == Presence.EQUIVOCAL ? Set.of("absent", "present") : Set.of(presence.word());
    Optional.ofNullable(FEATURES.get(seen.value().feature()))
        .ifPresent(sign -> put(sign, seen.site(), presence.word(), words, List.of(seen)));
  }

  private static String lidWords(Lids.Ptosis lid) {
    return switch (lid.presence()) {
      case PRESENT -> "low";
      case ABSENT -> "not low";
      case EQUIVOCAL -> "perhaps low";
    };
  }

  private static Set<String> lid(Lids.Ptosis lid) {
    return switch (lid.presence()) {
      case PRESENT -> Set.of("low");
      case ABSENT -> Set.of("up");
      case EQUIVOCAL -> Set.of("up", "low");
    };
  }

  private void drug(Seen<Drops.DrugTest> seen) {
    Drops.DrugTest test = seen.value();
    DrugSigns.of(test)
        .ifPresent(
            sign ->
                put(
                    sign,
                    seen.site(),
                    test.effect().word(),
                    Set.of(test.effect().word()),
                    List.of(seen)));
  }

  private void size(EyeView eye) {
    List<Seen<Pupils.Size>> all = eye.seen(Pupils.SIZE).toList();
    Set<String> words = new LinkedHashSet<>();
    all.forEach(seen -> words.add(PupilSizes.word(seen.value())));
    // Small in one light and large in another is none of them.
    if (words.size() == 1 || (words.size() == 2 && words.remove("middle"))) {
      String said =
          String.join(
              ", ",
              all.stream()
                  .map(s -> s.value().diameter() + " in " + s.value().lighting().word() + " light")
                  .toList());
      put(PupilSign.SIZE, eye.site(), said, words, List.copyOf(all));
    }
  }

  private void unequal() {
    sizes.unequal().ifPresent(found -> put(PupilSign.UNEQUAL, Site.BOTH, found));
    sizes.amount().ifPresent(found -> put(PupilSign.AMOUNT, Site.BOTH, found));
  }

  private void lit() {
    for (Site eye : Site.EACH_EYE) {
      exam.eye(eye)
          .only(Pupils.DIRECT)
          .ifPresent(
              own ->
                  exam.eye(eye.fellow())
                      .only(Pupils.CONSENSUAL)
                      .ifPresent(other -> lit(eye, own, other)));
    }
  }

  private void lit(Site eye, Seen<PupilResponse> own, Seen<PupilResponse> other) {
    boolean differ =
        (own.value() == PupilResponse.ABSENT) != (other.value() == PupilResponse.ABSENT);
    String said = "direct " + own.value().word() + ", of the fellow " + other.value().word();
    put(PupilSign.LIT, eye, said, Set.of(differ ? "differ" : "alike"), List.of(own, other));
  }

  private void pair() {
    EyeView pair = exam.both();
    one(
        pair,
        Pupils.AFFERENT_DEFECT,
        PupilSign.AFFERENT,
        defect -> defect.side().word(),
        defect ->
            defect.side() == DefectSide.EQUIVOCAL
                ? PupilSign.AFFERENT.words()
                : Set.of(defect.side().word()));
    one(
        pair,
        Movements.DIPLOPIA,
        PupilSign.DOUBLE,
        seen -> seen.kind().word(),
        seen -> Set.of(seen.kind() == DoubleVision.BINOCULAR ? "binocular" : "none"));
    FieldSign.of(exam).ifPresent(found -> put(PupilSign.FIELD, Site.BOTH, found));
  }
}
