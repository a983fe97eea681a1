package org.isopter.model.derive;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Perimetry;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Site;

/**
 * What is recorded of the fields that a category of vision impairment does not count: a loss by
 * confrontation, and any perimetry, which is not read.
 */
final class UncountedFields {

  /** Follows the sentence that names the category. */
  static final String SENTENCE =
      " The field is recorded too and not counted; a narrow one may make the category worse.";

  private UncountedFields() {}

  static List<Seen<?>> of(ExamView facts, Site eye) {
    return of(facts.eye(eye)).toList();
  }

  static List<Seen<?>> ofEither(ExamView facts) {
    return facts.eyes().<Seen<?>>flatMap(UncountedFields::of).toList();
  }

  private static Stream<Seen<?>> of(EyeView eye) {
    return Stream.of(
            eye.seen(Fields.CONFRONTATION, UncountedFields::isReduced),
            eye.seen(FieldFeatures.ISOPTER),
            eye.seen(Perimetry.MEAN_DEVIATION),
            eye.seen(Perimetry.FIELD_INDEX))
        .flatMap(seen -> seen);
  }

  static boolean isReduced(Fields.Confrontation field) {
    return field.regions().values().stream()
        .flatMap(outcome -> outcome.ifFound().stream())
        .anyMatch(response -> response != FieldResponse.FULL);
  }
}
