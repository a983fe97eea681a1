package org.isopter.model.derive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.clinical.field.FieldShape;
import org.isopter.model.clinical.pupil.PupilSign;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Concept;

/** The shape of the fields of both eyes, as far as the table of causes asks. */
final class FieldSign {

  private FieldSign() {}

  /**
   * Returns the shape; a test of some quadrants, of one eye or made twice is recorded, and may be
   * any of the words.
   */
  static Optional<PupilSizes.Found> of(ExamView exam) {
    List<Seen<?>> tests = new ArrayList<>();
    exam.eyes().forEach(eye -> eye.seen(Fields.CONFRONTATION).forEach(tests::add));
    return tests.isEmpty() ? Optional.empty() : Optional.of(found(shape(exam), tests));
  }

  private static PupilSizes.Found found(Optional<FieldShape> shape, List<Seen<?>> tests) {
    return new PupilSizes.Found(
        shape.map(FieldShape::words).orElse("with no pattern that could be read"),
        shape.map(one -> Set.of(Concept.word(one))).orElseGet(PupilSign.FIELD::words),
        tests);
  }

  private static Optional<FieldShape> shape(ExamView exam) {
    return exam.right()
        .only(Fields.CONFRONTATION)
        .flatMap(
            right ->
                exam.left()
                    .only(Fields.CONFRONTATION)
                    .flatMap(left -> FieldShape.of(right.value(), left.value())));
  }
}
