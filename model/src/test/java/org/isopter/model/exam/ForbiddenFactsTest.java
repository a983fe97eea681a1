package org.isopter.model.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Sampler;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Of every finding of the catalogue: each kind of thing that it forbids is no fact. */
class ForbiddenFactsTest {

  private static final Outcome<Datum> ANY = Outcome.found(new Datum.Count(1));

  private final Random random = new Random(20261127);
  private final Sampler sampler = new Sampler(random);

  private static Stream<DynamicTest> eachFinding(Consumer<Finding<?>> test) {
    return Catalogue.standard().all().stream()
        .map(finding -> DynamicTest.dynamicTest(finding.id(), () -> test.accept(finding)));
  }

  @TestFactory
  Stream<DynamicTest> refusesEveryWrongDatumInEveryPlace() {
    return eachFinding(
        finding ->
            finding
                .layout()
                .variants()
                .forEach(
                    variant -> {
                      EncodedValue value = allowed(finding, variant);
                      variant
                          .value()
                          .ifPresent(
                              spec ->
                                  spec.fold(new ForbiddenDatums())
                                      .forEach(
                                          wrong ->
                                              refuses(
                                                  finding,
                                                  withValue(value, Optional.of(wrong)),
                                                  Part.VALUE)));
                      variant.parts().forEach(part -> refusesIn(finding, value, part));
                    }));
  }

  private static void refusesIn(Finding<?> finding, EncodedValue value, Part<?, ?> part) {
    part.spec()
        .fold(new ForbiddenDatums())
        .forEach(
            wrong ->
                refuses(finding, value.with(Map.of(part.key(), Outcome.found(wrong))), part.key()));
    if (!part.mayBeAbsent()) {
      Map<String, Outcome<Datum>> absent = Map.of(part.key(), Outcome.absent(Absence.UNABLE));
      refuses(finding, value.with(absent), part.key());
    }
  }

  @TestFactory
  Stream<DynamicTest> refusesAnUnknownPartAndAMissingOne() {
    return eachFinding(
        finding ->
            finding
                .layout()
                .variants()
                .forEach(
                    variant -> {
                      EncodedValue value = allowed(finding, variant);
                      refuses(finding, value.with(Map.of("shoe-size", ANY)), "shoe-size");
                      variant.parts().stream()
                          .filter(Part::isRequired)
                          .forEach(
                              part -> refuses(finding, without(value, part.key()), part.key()));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> refusesANotationThatIsNotItsOwn() {
    return eachFinding(
        finding ->
            finding
                .layout()
                .variants()
                .forEach(
                    variant -> {
                      EncodedValue value = allowed(finding, variant);
                      refusesSomewhere(
                          finding,
                          new EncodedValue(
                              Optional.of(Absence.MASKED), value.value(), value.parts()));
                      if (variant.notation().isPresent()) {
                        refusesSomewhere(
                            finding,
                            new EncodedValue(Optional.empty(), value.value(), value.parts()));
                      }
                    }));
  }

  @TestFactory
  Stream<DynamicTest> refusesNoValueOrOneTooMany() {
    return eachFinding(
        finding ->
            finding
                .layout()
                .variants()
                .forEach(
                    variant -> {
                      EncodedValue value = allowed(finding, variant);
                      Optional<Datum> other =
                          variant.value().isPresent()
                              ? Optional.empty()
                              : Optional.of(new Datum.Count(1));
                      refuses(finding, withValue(value, other), Part.VALUE);
                    }));
  }

  @TestFactory
  Stream<DynamicTest> refusesATechniqueThatIsNotItsOwn() {
    return eachFinding(
        finding -> {
          Fact<?> fact = Fact.absent(finding, finding.sites().get(0), Absence.REFUSED);
          Fault fault =
              assertThrows(FaultException.class, () -> fact.by(Absence.MASKED)).faults().get(0);
          assertEquals("masked", fault.seen());
          assertTrue(fault.path().endsWith(".method"), fault.path());
          assertFalse(fault.wanted().isBlank());
        });
  }

  private EncodedValue allowed(Finding<?> finding, Variant variant) {
    for (int tries = 0; tries < 1000; tries++) {
      Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
      variant.parts().stream()
          .filter(part -> part.isRequired() || random.nextInt(3) == 0)
          .forEach(part -> parts.put(part.key(), Outcome.found(sampler.datum(part.spec()))));
      EncodedValue value =
          new EncodedValue(variant.notation(), variant.value().map(sampler::datum), parts);
      if (finding.layout().check(value).isEmpty()) {
        return value;
      }
    }
    throw new AssertionError("no value of " + finding);
  }

  private static EncodedValue withValue(EncodedValue value, Optional<Datum> datum) {
    return new EncodedValue(value.notation(), datum, value.parts());
  }

  private static EncodedValue without(EncodedValue value, String key) {
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>(value.parts());
    parts.remove(key);
    return new EncodedValue(value.notation(), value.value(), parts);
  }

  private static void refuses(Finding<?> finding, EncodedValue value, String key) {
    Fault fault = refusesSomewhere(finding, value).get(0);
    assertEquals(key, fault.path(), fault.toString());
  }

  private static List<Fault> refusesSomewhere(Finding<?> finding, EncodedValue value) {
    Result<? extends Fact<?>> made = Fact.decode(finding, finding.sites().get(0), value);
    assertFalse(made.isOk(), () -> finding + " allows " + value);
    made.faults()
        .forEach(
            fault -> {
              assertFalse(fault.seen().isBlank(), fault.toString());
              assertFalse(fault.wanted().isBlank(), fault.toString());
            });
    return made.faults();
  }
}
