package org.isopter.model.derive;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Site;

/** The sizes of both pupils in one light. */
record PupilPairs(ExamView exam) {

  /** A difference in one light, and the two sizes it is of. */
  record Pair(Anisocoria difference, List<Seen<?>> sizes) {}

  Optional<Pair> in(Lighting light) {
    return size(Site.RIGHT, light)
        .flatMap(right -> size(Site.LEFT, light).map(left -> pair(right, left)));
  }

  private Optional<Seen<Pupils.Size>> size(Site eye, Lighting light) {
    return exam.eye(eye).only(Pupils.SIZE, size -> size.lighting() == light);
  }

  private static Pair pair(Seen<Pupils.Size> right, Seen<Pupils.Size> left) {
    return new Pair(
        Anisocoria.of(right.value().diameter().value(), left.value().diameter().value()).orThrow(),
        List.of(right, left));
  }
}
