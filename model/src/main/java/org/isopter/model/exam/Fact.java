package org.isopter.model.exam;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.isopter.model.value.TextCheck;
import org.isopter.model.value.Times;

/**
 * One finding at one site: what was found, or why nothing was.
 *
 * @param finding what was examined
 * @param site which eye, or both together
 * @param outcome what was found, or why nothing was
 * @param method the technique, when stated; one of the finding's
 * @param at when, where it differs from the time of the examination
 * @param device the make or kind of instrument as written, when stated
 * @param remarks what else was said, in order
 * @param <V> the type of the value
 */
public record Fact<V>(
    Finding<V> finding,
    Site site,
    Outcome<V> outcome,
    Optional<Concept> method,
    Optional<OffsetDateTime> at,
    Optional<String> device,
    List<String> remarks) {

  public Fact {
    remarks = List.copyOf(remarks);
    remarks.forEach(text -> TextCheck.require("remarks", text));
    device.ifPresent(text -> TextCheck.require("device", text));
    at.ifPresent(time -> Times.require("at", time));
    if (!finding.sites().contains(site)) {
      throw new IllegalArgumentException(finding + " is not found at " + site.word());
    }
  }

  /** Returns a fact with a value and nothing else. */
  public static <V> Fact<V> of(Finding<V> finding, Site site, V value) {
    return of(finding, site, Outcome.found(value));
  }

  /** Returns a fact without a value, and why. */
  public static <V> Fact<V> absent(Finding<V> finding, Site site, Absence reason) {
    return of(finding, site, Outcome.absent(reason));
  }

  private static <V> Fact<V> of(Finding<V> finding, Site site, Outcome<V> outcome) {
    return new Fact<>(
        finding, site, outcome, Optional.empty(), Optional.empty(), Optional.empty(), List.of());
  }

  /** Returns the fact of a panel, or every fault in the panel. */
  public static <V> Result<Fact<V>> decode(Finding<V> finding, Site site, EncodedValue panel) {
    return finding.layout().decode(panel).map(value -> of(finding, site, value));
  }

  /** Returns the value in first-order form; empty when there is none. */
  public Optional<EncodedValue> panel() {
    return outcome.ifFound().map(finding.layout()::encode);
  }

  /** Returns this fact as found by a technique. */
  public Fact<V> by(Concept technique) {
    return new Fact<>(finding, site, outcome, Optional.of(technique), at, device, remarks);
  }

  /** Returns this fact as found at a time of its own. */
  public Fact<V> at(OffsetDateTime time) {
    return new Fact<>(finding, site, outcome, method, Optional.of(time), device, remarks);
  }

  /** Returns this fact as found with an instrument. */
  public Fact<V> with(String instrument) {
    return new Fact<>(finding, site, outcome, method, at, Optional.of(instrument), remarks);
  }

  /** Returns this fact with its remarks replaced. */
  public Fact<V> remarks(List<String> lines) {
    return new Fact<>(finding, site, outcome, method, at, device, lines);
  }

  Fact<V> withoutTime() {
    return new Fact<>(finding, site, outcome, method, Optional.empty(), device, remarks);
  }
}
