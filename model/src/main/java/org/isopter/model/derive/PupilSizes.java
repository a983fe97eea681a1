package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.clinical.pupil.PupilSign;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;

/** The sizes of the pupils against each other. */
final class PupilSizes {

  private static final Map<Lighting, List<BigDecimal>> USUAL =
      Map.of(
          Lighting.BRIGHT, List.of(new BigDecimal("1.9"), new BigDecimal("3.6")),
          Lighting.ROOM, List.of(new BigDecimal("2.6"), new BigDecimal("5.0")),
          Lighting.DIM, List.of(new BigDecimal("3.1"), new BigDecimal("7.9")));

  private final ExamView exam;
  private final PupilPairs pairs;

  PupilSizes(ExamView exam, PupilPairs pairs) {
    this.exam = exam;
    this.pairs = pairs;
  }

  record Found(String said, Set<String> words, List<Seen<?>> from) {}

  /**
   * Bright and room light: 1.9 to 3.6 and 2.6 to 5.0 mm, secondary page; dim: 5.5 mm and twice 1.2
   * about it, computed from the PupilX study.
   */
  static String word(Pupils.Size size) {
    BigDecimal mm = size.diameter().value();
    List<BigDecimal> usual = USUAL.getOrDefault(size.lighting(), List.of());
    return mm.compareTo(usual.get(0)) < 0
        ? "small"
        : mm.compareTo(usual.get(1)) > 0 ? "large" : "middle";
  }

  Optional<Found> unequal() {
    Optional<PupilPairs.Pair> bright = pairs.in(Lighting.BRIGHT);
    Optional<PupilPairs.Pair> dim = pairs.in(Lighting.DIM);
    if (bright.isPresent() && dim.isPresent()) {
      return both(bright.get(), dim.get());
    }
    return bright
        .or(() -> dim)
        .or(() -> pairs.in(Lighting.ROOM))
        .map(pair -> one(pair))
        .or(this::judged);
  }

  private static Optional<Found> both(PupilPairs.Pair bright, PupilPairs.Pair dim) {
    List<Seen<?>> from = Stream.concat(bright.sizes().stream(), dim.sizes().stream()).toList();
    if (!isReal(bright) && !isReal(dim)) {
      return Optional.of(new Found("the same", Set.of("none"), from));
    }
    return Anisocoria.inLightAndDark(bright.difference(), dim.difference())
        .value()
        .map(
            found -> {
              String eye = found.larger().orElseThrow().word();
              String light =
                  switch (found.light()) {
                    case MORE_IN_LIGHT -> "light";
                    case MORE_IN_DARK -> "dark";
                    case ALIKE -> "alike";
                  };
              String more =
                  light.equals("alike") ? " alike in both lights" : " more in the " + light;
              return new Found(
                  "unlike, " + eye + " larger," + more, Set.of(eye + "-" + light), from);
            });
  }

  private static Found one(PupilPairs.Pair pair) {
    if (!isReal(pair)) {
      // In another light they may differ.
      Set<String> words = new LinkedHashSet<>(PupilSign.UNEQUAL.words());
      return new Found("the same in one light", words, pair.sizes());
    }
    String eye = pair.difference().larger().orElseThrow().word();
    return new Found(
        "unlike, " + eye + " larger",
        Set.of(eye + "-light", eye + "-dark", eye + "-alike"),
        pair.sizes());
  }

  private static boolean isReal(PupilPairs.Pair pair) {
    return pair.difference().difference().compareTo(Anisocoria.REPEATABILITY) > 0;
  }

  private Optional<Found> judged() {
    Set<String> unequal = new LinkedHashSet<>(PupilSign.UNEQUAL.words());
    unequal.removeAll(PupilSign.UNEQUAL.usual());
    return exam.both()
        .only(Pupils.EQUALITY)
        .flatMap(
            seen ->
                switch (seen.value()) {
                  case EQUAL -> Optional.empty();
                  case UNEQUAL ->
                      Optional.of(
                          new Found(
                              "unlike, which is larger not recorded", unequal, List.of(seen)));
                  case RIGHT_LARGER -> Optional.of(judged("right", seen));
                  case LEFT_LARGER -> Optional.of(judged("left", seen));
                });
  }

  private static Found judged(String eye, Seen<PupilEquality> seen) {
    return new Found(
        "unlike, " + eye + " larger",
        Set.of(eye + "-light", eye + "-dark", eye + "-alike"),
        List.of(seen));
  }

  Optional<Found> amount() {
    List<PupilPairs.Pair> all =
        Stream.of(Lighting.values()).flatMap(light -> pairs.in(light).stream()).toList();
    List<Seen<?>> from = all.stream().<Seen<?>>flatMap(one -> one.sizes().stream()).toList();
    boolean great =
        all.stream().anyMatch(one -> one.difference().difference().compareTo(Anisocoria.RARE) > 0);
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Found(
                great ? "more than 1 mm" : "up to 1 mm", Set.of(great ? "great" : "small"), from));
  }
}
