package org.isopter.model.exam;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/**
 * An examination as one asks it: by finding, and by eye.
 *
 * <p>The facts are sorted by finding once, so that many questions cost little.
 */
public final class ExamView {

  private final Exam exam;
  private final List<Named> entries = new ArrayList<>();
  private final Map<Finding<?>, Stated> byFinding = new LinkedHashMap<>();
  private final Map<FactKey, Fact<?>> byKey = new HashMap<>();

  /**
   * A fact under its name.
   *
   * @param key the name, which no other fact of the examination has
   * @param fact the fact
   */
  public record Named(FactKey key, Fact<?> fact) {}

  /** What is stated of one finding; questions are many, so that the values are sorted out once. */
  private static final class Stated {

    static final Stated NOTHING = new Stated();

    private final List<Named> all = new ArrayList<>();
    private final List<Seen<?>> values = new ArrayList<>();
    private final Map<Site, List<Seen<?>>> bySite = new EnumMap<>(Site.class);

    void add(Named named) {
      all.add(named);
      value(named.key(), named.fact())
          .ifPresent(
              seen -> {
                values.add(seen);
                bySite.computeIfAbsent(seen.site(), any -> new ArrayList<>()).add(seen);
              });
    }

    private static <V> Optional<Seen<V>> value(FactKey key, Fact<V> fact) {
      return fact.outcome().ifFound().map(value -> new Seen<>(key, fact, value));
    }
  }

  private ExamView(Exam exam) {
    this.exam = exam;
    List<FactKey> keys = exam.keys();
    for (int i = 0; i < keys.size(); i++) {
      Fact<?> fact = exam.facts().get(i);
      Named named = new Named(keys.get(i), fact);
      entries.add(named);
      byFinding.computeIfAbsent(fact.finding(), any -> new Stated()).add(named);
      byKey.put(keys.get(i), fact);
    }
  }

  /** Returns a view of an examination. */
  public static ExamView of(Exam exam) {
    return new ExamView(Objects.requireNonNull(exam, "a view needs an examination"));
  }

  /** Returns the examination. */
  public Exam exam() {
    return exam;
  }

  /** Returns what is stated of the right eye. */
  public EyeView right() {
    return eye(Site.RIGHT);
  }

  /** Returns what is stated of the left eye. */
  public EyeView left() {
    return eye(Site.LEFT);
  }

  /** Returns what is stated of both eyes together, or of the pair. */
  public EyeView both() {
    return eye(Site.BOTH);
  }

  /** Returns what is stated of one site. */
  public EyeView eye(Site site) {
    return new EyeView(this, site);
  }

  /** Returns each eye apart, the right one first. */
  public Stream<EyeView> eyes() {
    return Site.EACH_EYE.stream().map(this::eye);
  }

  /** Returns every fact under its name, the absent ones too, in the order of the record. */
  public Stream<Named> entries() {
    return entries.stream();
  }

  /** Returns the findings that are stated, or stated to be absent, in the order of the record. */
  public Stream<Finding<?>> findings() {
    return byFinding.keySet().stream();
  }

  /** Says whether nothing is stated of a finding, not even that it was not done. */
  public boolean isSilentOn(Finding<?> finding) {
    return !byFinding.containsKey(finding);
  }

  /** Returns every value of a finding, in the order of the record. */
  public <V> Stream<Seen<V>> seen(Finding<V> finding) {
    return stream(as(finding, stated(finding).values));
  }

  /** Returns every value of a finding at a site, in the order of the record. */
  <V> List<Seen<V>> seen(Finding<V> finding, Site site) {
    return as(finding, stated(finding).bySite.getOrDefault(site, List.of()));
  }

  /** Returns what was found of a finding in both eyes in one way and at one time. */
  public <V> Stream<EyePair<V>> pairs(Finding<V> finding) {
    return right().seen(finding).flatMap(right -> EyePair.of(right, left().seen(finding)));
  }

  /**
   * Returns the values of a finding that may have been there when a fact was found: those with a
   * time of their own after that of the fact were not. A fact without a time has that of the
   * examination.
   */
  public <V> Stream<Seen<V>> notLater(Finding<V> finding, Fact<?> than) {
    OffsetDateTime time = than.at().orElse(exam.header().performed());
    return seen(finding).filter(seen -> seen.fact().at().filter(time::isBefore).isEmpty());
  }

  /**
   * Returns the fact of that name.
   *
   * @throws IllegalArgumentException when there is none
   */
  public Fact<?> fact(FactKey key) {
    Fact<?> fact = byKey.get(key);
    if (fact == null) {
      throw new IllegalArgumentException("the examination has no fact " + key);
    }
    return fact;
  }

  /** Returns all facts of a finding, the absent ones too, in the order of the record. */
  public <V> Stream<Fact<V>> facts(Finding<V> finding) {
    return named(finding).map(named -> as(finding, named.fact()));
  }

  private Stream<Named> named(Finding<?> finding) {
    return stream(stated(finding).all);
  }

  private Stated stated(Finding<?> finding) {
    return byFinding.getOrDefault(finding, Stated.NOTHING);
  }

  /** Most questions are of findings that a record says nothing of. */
  private static <T> Stream<T> stream(List<T> list) {
    return list.isEmpty() ? Stream.empty() : list.stream();
  }

  @SuppressWarnings("unchecked") // The finding is the key: its values carry its type.
  private static <V> List<Seen<V>> as(Finding<V> finding, List<Seen<?>> values) {
    for (Seen<?> seen : values) {
      as(finding, seen.fact());
    }
    return (List<Seen<V>>) (List<?>) values;
  }

  @SuppressWarnings("unchecked") // The finding is the key: its facts carry its type.
  private static <V> Fact<V> as(Finding<V> finding, Fact<?> fact) {
    if (fact.finding() != finding) {
      throw new IllegalStateException(fact + " is no fact of " + finding);
    }
    return (Fact<V>) fact;
  }
}
