package org.isopter.model.exam;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.finding.Decoded;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.isopter.model.value.TextCheck;
import org.isopter.model.value.Times;

/**
 * One finding at one site: what was found, or why nothing was.
 *
 * <p>A fact is checked against the finding when it is made: site, technique, notation, units,
 * ranges, decimals and parts. What the catalogue forbids cannot become a fact.
 *
 * @param <V> the type of the value
 */
public final class Fact<V> {

  private final Finding<V> finding;
  private final Site site;
  private final Outcome<V> outcome;
  private final Optional<EncodedValue> encoded;
  private final Optional<Concept> method;
  private final Optional<OffsetDateTime> at;
  private final Optional<String> device;
  private final List<String> remarks;

  private Fact(
      Finding<V> finding,
      Site site,
      Outcome<V> outcome,
      Optional<EncodedValue> encoded,
      Optional<Concept> method,
      Optional<OffsetDateTime> at,
      Optional<String> device,
      List<String> remarks) {
    this.finding = finding;
    this.site = site;
    this.outcome = outcome;
    this.encoded = encoded;
    this.method = method;
    this.at = at;
    this.device = device;
    this.remarks = List.copyOf(remarks);
  }

  /**
   * Returns a fact with a value and nothing else.
   *
   * @throws FaultException when the finding does not allow the site or the value
   */
  public static <V> Fact<V> of(Finding<V> finding, Site site, V value) {
    requireSite(finding, site);
    Objects.requireNonNull(value, "a fact needs a value; what was not found is absent");
    Result<Decoded<V>> checked = finding.layout().check(value);
    if (checked.isOk()) {
      return bare(finding, site, checked.orThrow());
    }
    throw new FaultException(
        checked.faults().stream().map(fault -> fault.within(path(finding, site))).toList());
  }

  /**
   * Returns a fact with a value that was read by the layout of the finding.
   *
   * @throws FaultException when the finding does not allow the site
   * @throws IllegalArgumentException when the layout is that of another finding
   */
  public static <V> Fact<V> of(Finding<V> finding, Site site, Decoded<V> value) {
    requireSite(finding, site);
    if (value.layout() != finding.layout()) {
      throw new IllegalArgumentException("the value was read by the layout of another finding");
    }
    return bare(finding, site, value);
  }

  /**
   * Returns a fact without a value, and why.
   *
   * @throws FaultException when the finding does not allow the site
   */
  public static <V> Fact<V> absent(Finding<V> finding, Site site, Absence reason) {
    requireSite(finding, site);
    Objects.requireNonNull(reason, "an absent fact needs a reason");
    return bare(finding, site, Outcome.absent(reason), Optional.empty());
  }

  private static <V> Fact<V> bare(Finding<V> finding, Site site, Decoded<V> value) {
    return bare(finding, site, Outcome.found(value.value()), Optional.of(value.encoded()));
  }

  private static <V> Fact<V> bare(
      Finding<V> finding, Site site, Outcome<V> outcome, Optional<EncodedValue> encoded) {
    return new Fact<>(
        finding,
        site,
        outcome,
        encoded,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  /** Returns the fact of an encoded value, or every fault in it; paths are part keys. */
  public static <V> Result<Fact<V>> decode(Finding<V> finding, Site site, EncodedValue panel) {
    return finding.layout().read(panel).map(value -> of(finding, site, value));
  }

  private static void requireSite(Finding<?> finding, Site site) {
    Objects.requireNonNull(finding, "a fact needs a finding");
    Objects.requireNonNull(site, "a fact needs a site");
    if (!finding.sites().contains(site)) {
      String sites = finding.sites().stream().map(Site::word).collect(Collectors.joining(" or "));
      throw new FaultException(
          new Fault(
              "findings." + finding.id(),
              site.word(),
              sites,
              "record it under " + sites + ", or choose another finding"));
    }
  }

  private static String path(Finding<?> finding, Site site) {
    return "findings." + finding.id() + "." + site.word();
  }

  /** Returns what was examined. */
  public Finding<V> finding() {
    return finding;
  }

  /** Returns which eye, or both together. */
  public Site site() {
    return site;
  }

  /** Returns what was found, or why nothing was. */
  public Outcome<V> outcome() {
    return outcome;
  }

  /** Returns the value in first-order form; empty when there is none. */
  public Optional<EncodedValue> panel() {
    return encoded;
  }

  /** Returns the technique, when stated; one of the finding's. */
  public Optional<Concept> method() {
    return method;
  }

  /** Returns when, where it differs from the time of the examination. */
  public Optional<OffsetDateTime> at() {
    return at;
  }

  /** Returns the make or kind of instrument as written, when stated. */
  public Optional<String> device() {
    return device;
  }

  /** Returns what else was said, in order. */
  public List<String> remarks() {
    return remarks;
  }

  /**
   * Returns this fact as found by a technique.
   *
   * @throws FaultException when it is none of the finding's techniques
   */
  public Fact<V> by(Concept technique) {
    Objects.requireNonNull(technique, "technique");
    boolean known = finding.methods().filter(all -> all.concepts().contains(technique)).isPresent();
    if (!known) {
      throw new FaultException(
          new Fault(
              path(finding, site) + ".method",
              technique.word(),
              finding.methods().map(all -> all.choices()).orElse("no technique"),
              "leave the technique out, or choose one that is listed"));
    }
    return new Fact<>(finding, site, outcome, encoded, Optional.of(technique), at, device, remarks);
  }

  /**
   * Returns this fact as found at a time of its own.
   *
   * @throws FaultException when FHIR cannot hold the time
   */
  public Fact<V> at(OffsetDateTime time) {
    Objects.requireNonNull(time, "time");
    Times.require("at", time);
    return new Fact<>(finding, site, outcome, encoded, method, Optional.of(time), device, remarks);
  }

  /**
   * Returns this fact as found with an instrument.
   *
   * @throws FaultException when the name is blank or holds what no plain text holds
   */
  public Fact<V> with(String instrument) {
    Objects.requireNonNull(instrument, "instrument");
    TextCheck.require("device", instrument);
    return new Fact<>(
        finding, site, outcome, encoded, method, at, Optional.of(instrument), remarks);
  }

  /**
   * Returns this fact with its remarks replaced.
   *
   * @throws FaultException when a remark is blank or holds what no plain text holds
   */
  public Fact<V> remarks(List<String> lines) {
    lines.forEach(text -> TextCheck.require("remarks", text));
    return new Fact<>(finding, site, outcome, encoded, method, at, device, lines);
  }

  /** Returns this fact with what is stated; what is not stays as it is. */
  public Fact<V> with(
      Optional<Concept> technique, Optional<OffsetDateTime> time, Optional<String> instrument) {
    Fact<V> fact = technique.map(this::by).orElse(this);
    fact = time.map(fact::at).orElse(fact);
    return instrument.map(fact::with).orElse(fact);
  }

  /** Returns this fact as of the time of the examination. */
  public Fact<V> withoutTime() {
    return new Fact<>(finding, site, outcome, encoded, method, Optional.empty(), device, remarks);
  }

  /** Returns this fact without the instrument. */
  public Fact<V> withoutDevice() {
    return new Fact<>(finding, site, outcome, encoded, method, at, Optional.empty(), remarks);
  }

  private List<Object> stated() {
    return List.of(finding, site, outcome, method, at, device, remarks);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Fact<?> that && stated().equals(that.stated());
  }

  @Override
  public int hashCode() {
    return stated().hashCode();
  }

  @Override
  public String toString() {
    List<String> words = new ArrayList<>(List.of(finding.id(), site.word()));
    words.add(outcome.fold(Object::toString, reason -> "absent: " + reason.word()));
    method.ifPresent(technique -> words.add(technique.word()));
    at.ifPresent(time -> words.add("at " + time));
    device.ifPresent(words::add);
    words.addAll(remarks);
    return String.join(" ", words);
  }
}
