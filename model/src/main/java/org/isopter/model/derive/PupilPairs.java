package org.isopter.model.derive;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyePair;
import org.isopter.model.exam.Seen;

/** The sizes of both pupils in each light. */
final class PupilPairs {

  private final Map<Lighting, Pair> pairs = new EnumMap<>(Lighting.class);

  PupilPairs(ExamView exam) {
    for (Lighting light : Lighting.values()) {
      find(exam, light).ifPresent(pair -> pairs.put(light, pair));
    }
  }

  /** A difference in one light, and the two sizes it is of. */
  record Pair(Anisocoria difference, List<Seen<?>> sizes) {}

  /** Returns the two sizes in a light; none where an eye has several, or the two times differ. */
  Optional<Pair> in(Lighting light) {
    return Optional.ofNullable(pairs.get(light));
  }

  private static Optional<Pair> find(ExamView exam, Lighting light) {
    boolean one =
        exam.eyes()
            .allMatch(eye -> eye.only(Pupils.SIZE, size -> size.lighting() == light).isPresent());
    return one
        ? exam.pairs(Pupils.SIZE)
            .filter(pair -> pair.right().value().lighting() == light)
            .findFirst()
            .map(PupilPairs::pair)
        : Optional.empty();
  }

  private static Pair pair(EyePair<Pupils.Size> pair) {
    return new Pair(
        Anisocoria.of(
                pair.right().value().diameter().value(), pair.left().value().diameter().value())
            .orThrow(),
        List.copyOf(pair.seen()));
  }
}
