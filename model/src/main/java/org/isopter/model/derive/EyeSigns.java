package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.clinical.pupil.PupilSign;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Quantity;

/** What the eye around a pupil shows, as far as the table of causes asks: pressure and front. */
final class EyeSigns {

  private static final BigDecimal HIGH = BigDecimal.valueOf(40);
  private static final BigDecimal RAISED = BigDecimal.valueOf(22);

  /** Signs that are inside the eye or of a cornea that swells. */
  private static final Set<AnteriorSign> INNER =
      EnumSet.of(
          AnteriorSign.CORNEAL_OEDEMA,
          AnteriorSign.ANTERIOR_CHAMBER_CELLS,
          AnteriorSign.ANTERIOR_CHAMBER_FLARE,
          AnteriorSign.SHALLOW_ANTERIOR_CHAMBER,
          AnteriorSign.HYPHAEMA,
          AnteriorSign.HYPOPYON,
          AnteriorSign.IRIS_NEW_VESSELS,
          AnteriorSign.POSTERIOR_SYNECHIAE);

  private static final Set<AnteriorSign> RED = EnumSet.of(AnteriorSign.CONJUNCTIVAL_REDNESS);

  private EyeSigns() {}

  /** Returns the spans of the table that the pressures lie in. */
  static Optional<PupilSizes.Found> pressure(EyeView eye) {
    List<Seen<Quantity>> all = eye.seen(Pressures.INTRAOCULAR).toList();
    List<Seen<Pressures.Beyond>> above =
        eye.seen(Pressures.BEYOND, Pressures.Beyond::isAbove).toList();
    Set<String> words = new LinkedHashSet<>();
    List<String> said = new ArrayList<>();
    all.forEach(seen -> words.add(pressure(seen.value().value())));
    all.forEach(seen -> said.add(seen.value().toString()));
    above.forEach(seen -> words.addAll(above(pressure(seen.value().limit().value()))));
    above.forEach(seen -> said.add("above " + seen.value().limit()));
    List<Seen<?>> from = Stream.<Seen<?>>concat(all.stream(), above.stream()).toList();
    return words.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new PupilSizes.Found(
                String.join(", ", said.stream().distinct().toList()), words, from));
  }

  /** Above a limit lies its own span and whatever is higher. */
  private static Set<String> above(String limit) {
    List<String> spans = List.copyOf(PupilSign.PRESSURE.words());
    return Set.copyOf(spans.subList(spans.indexOf(limit), spans.size()));
  }

  private static String pressure(BigDecimal mmHg) {
    return mmHg.compareTo(HIGH) >= 0
        ? "40-or-more"
        : mmHg.compareTo(RAISED) >= 0 ? "22-to-39" : "under-22";
  }

  /** Returns what stands at the front; what is inside the eye before a redness. */
  static Optional<PupilSizes.Found> front(EyeView eye) {
    return front(eye, INNER, "inner").or(() -> front(eye, RED, "red"));
  }

  private static Optional<PupilSizes.Found> front(
      EyeView eye, Set<AnteriorSign> some, String word) {
    List<Seen<Segments.Sign<AnteriorSign>>> found =
        eye.seen(
                Segments.ANTERIOR,
                sign -> sign.presence() == Presence.PRESENT && some.contains(sign.sign()))
            .toList();
    String said = String.join(", ", found.stream().map(s -> s.value().sign().word()).toList());
    return found.isEmpty()
        ? Optional.empty()
        : Optional.of(new PupilSizes.Found(said, Set.of(word), List.copyOf(found)));
  }
}
