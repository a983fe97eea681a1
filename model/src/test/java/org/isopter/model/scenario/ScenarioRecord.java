package org.isopter.model.scenario;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DilatingDrug;
import org.isopter.model.answer.pupil.DrugEffect;
import org.isopter.model.answer.pupil.TestDrug;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.PosteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Perimetry;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/**
 * A short record: shorthand, and behind a plus what shorthand cannot write ({@code +front R
 * hyphaema}, {@code +drop R tropicamide}, {@code +test R pilocarpine 0.05 narrower}).
 */
final class ScenarioRecord {

  private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

  private static final Term ABOVE = new Term("above", Code.local("beyond-limit", "above", "Above"));

  private ScenarioRecord() {}

  static Exam of(String text) {
    return of("scenario", WHEN, text);
  }

  static Exam of(String id, OffsetDateTime when, String text) {
    List<String> items = Arrays.stream(text.split(";")).map(String::trim).toList();
    String note =
        items.stream().filter(item -> !item.startsWith("+")).collect(Collectors.joining("; "));
    List<Fact<?>> facts = new ArrayList<>();
    if (!note.isBlank()) {
      facts.addAll(NoteReader.performed(when).facts(note).orThrow());
    }
    items.stream()
        .filter(item -> item.startsWith("+"))
        .map(ScenarioRecord::fact)
        .forEach(facts::add);
    Header header = Header.of(Identifier.of(id), Party.of(Identifier.of("someone")), when);
    return new Exam(header, facts);
  }

  private static Fact<?> fact(String item) {
    List<String> words = Arrays.asList(item.substring(1).split(" +"));
    Site site =
        switch (words.get(1)) {
          case "R" -> Site.RIGHT;
          case "L" -> Site.LEFT;
          default -> Site.BOTH;
        };
    List<String> rest = words.subList(2, words.size());
    return fact(words.get(0), site, rest);
  }

  private static Fact<?> fact(String kind, Site site, List<String> rest) {
    String first = rest.get(0);
    return switch (kind) {
      case "front" -> Fact.of(Segments.ANTERIOR, site, sign(AnteriorSign.class, rest));
      case "back" -> Fact.of(Segments.POSTERIOR, site, sign(PosteriorSign.class, rest));
      case "drop" ->
          Fact.of(
              Drops.DILATION,
              site,
              new Drops.Dilation(one(DilatingDrug.class, first), Optional.empty()));
      case "test" -> Fact.of(Drops.TEST, site, drugTest(rest));
      case "above" ->
          Fact.of(
              Pressures.BEYOND, site, new Pressures.Beyond(Quantity.of(first, Unit.MM_HG), ABOVE));
      case "md" -> Fact.of(Perimetry.MEAN_DEVIATION, site, new BigDecimal(first));
      case "vfi" -> Fact.of(Perimetry.FIELD_INDEX, site, new BigDecimal(first));
      case "dd" -> Fact.of(Discs.DIAMETER, site, Quantity.of(first, Unit.MILLIMETRE));
      case "curve" ->
          Fact.of(
              Corneas.CURVATURE,
              site,
              new Corneas.Curvature(
                  Quantity.of(first, Unit.DIOPTRE),
                  Quantity.of(rest.get(1), Unit.DIOPTRE),
                  Optional.empty()));
      default -> throw new AssertionError(kind);
    };
  }

  private static <S extends Enum<S>> Segments.Sign<S> sign(Class<S> list, List<String> rest) {
    boolean absent = rest.get(rest.size() - 1).equals("absent");
    return new Segments.Sign<>(one(list, rest.get(0)), absent ? Presence.ABSENT : Presence.PRESENT);
  }

  private static Drops.DrugTest drugTest(List<String> rest) {
    Optional<Quantity> strength =
        rest.size() == 3 ? Optional.of(Quantity.of(rest.get(1), Unit.PERCENT)) : Optional.empty();
    DrugEffect effect = one(DrugEffect.class, rest.get(rest.size() - 1));
    return new Drops.DrugTest(effect, one(TestDrug.class, rest.get(0)), strength, Optional.empty());
  }

  private static <E extends Enum<E>> E one(Class<E> list, String word) {
    String name = word.toUpperCase(Locale.ROOT).replace('-', '_');
    return Stream.of(list.getEnumConstants())
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no " + word));
  }
}
