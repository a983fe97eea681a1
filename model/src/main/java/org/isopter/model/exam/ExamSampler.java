package org.isopter.model.exam;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Sampler;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/**
 * Makes random examinations: every finding, every notation, every reason for absence turns up.
 *
 * <p>They try the machinery and make no clinical sense.
 */
public final class ExamSampler {

  private static final OffsetDateTime START = OffsetDateTime.parse("2026-01-01T08:00:00+01:00");

  private final RandomGenerator random;
  private final Sampler sampler;
  private final List<Finding<?>> findings;

  /** Makes a sampler of the findings on a source of randomness. */
  public ExamSampler(List<Finding<?>> findings, RandomGenerator random) {
    this.findings = List.copyOf(findings);
    this.random = random;
    this.sampler = new Sampler(random);
  }

  /** Returns a random examination with at least one fact. */
  public Exam next() {
    List<Fact<?>> facts = new ArrayList<>();
    int count = 1 + random.nextInt(12);
    for (int i = 0; i < count; i++) {
      facts.add(fact(sampler.pick(findings)));
    }
    return new Exam(header(), facts);
  }

  /** Returns a random fact of a finding. */
  public <V> Fact<V> fact(Finding<V> finding) {
    Outcome<V> outcome =
        random.nextInt(8) == 0
            ? Outcome.absent(sampler.pick(List.of(Absence.values())))
            : Outcome.found(sampler.value(finding.layout()));
    Site site = sampler.pick(finding.sites());
    Fact<V> fact =
        outcome.fold(
            value -> Fact.of(finding, site, value), reason -> Fact.absent(finding, site, reason));
    return fact.with(
            finding
                .methods()
                .filter(any -> random.nextBoolean())
                .map(m -> sampler.pick(m.concepts())),
            sometimes().map(yes -> time()),
            sometimes().map(yes -> sampler.text(40)))
        .remarks(sometimes().map(yes -> List.of(sampler.text(40))).orElse(List.of()));
  }

  private Header header() {
    Status status = sampler.pick(List.of(Status.values()));
    return new Header(
        identifier("exam-" + random.nextInt(1_000_000)),
        new Party(Optional.of(identifier("p-" + random.nextInt(10_000))), sometimesText()),
        sometimes().map(yes -> sampler.value(Demographics.LAYOUT)).orElse(Demographics.UNKNOWN),
        sometimes().map(yes -> new Party(Optional.empty(), Optional.of(sampler.text(40)))),
        time(),
        status,
        sometimes().map(yes -> sampler.pick(List.of(Setting.values()))),
        status == Status.AMENDED
            ? Optional.of(identifier("exam-" + random.nextInt(1_000_000)))
            : Optional.empty(),
        sometimesText());
  }

  private Identifier identifier(String value) {
    return random.nextBoolean()
        ? Identifier.of(value)
        : Identifier.of("https://hospital.example/ids", value);
  }

  private OffsetDateTime time() {
    ZoneOffset offset = ZoneOffset.ofTotalSeconds((random.nextInt(49) - 24) * 1800);
    return START.plusSeconds(random.nextInt(31_536_000)).withOffsetSameInstant(offset);
  }

  private Optional<String> sometimesText() {
    return sometimes().map(yes -> sampler.text(40));
  }

  private Optional<Boolean> sometimes() {
    return Optional.of(true).filter(yes -> random.nextInt(4) == 0);
  }
}
