package org.isopter.model.catalogue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Code;

/**
 * The findings that a reader or writer knows, by name and by code.
 *
 * <p>{@link #standard()} is what Isopter ships; a caller with findings of its own makes another.
 */
public final class Catalogue {

  private final List<Finding<?>> all;
  private final Map<String, Finding<?>> byId = new HashMap<>();
  private final Map<String, Finding<?>> byCode = new HashMap<>();

  private Catalogue(List<Finding<?>> all) {
    this.all = List.copyOf(all);
    this.all.forEach(this::index);
  }

  /** Returns the findings of the bedside eye examination. */
  public static Catalogue standard() {
    return Standard.CATALOGUE;
  }

  /**
   * Returns a catalogue of these findings.
   *
   * @throws IllegalArgumentException when two findings share a name or a code
   */
  public static Catalogue of(List<Finding<?>> findings) {
    return new Catalogue(findings);
  }

  /** Returns this catalogue with one more finding. */
  public Catalogue plus(Finding<?> finding) {
    return new Catalogue(Stream.concat(all.stream(), Stream.of(finding)).toList());
  }

  /** Returns every finding, in the order of an examination. */
  public List<Finding<?>> all() {
    return all;
  }

  /** Returns the finding of that name. */
  public Optional<Finding<?>> byId(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** Returns the finding that travels under a code. */
  public Optional<Finding<?>> byCode(String system, String code) {
    return Optional.ofNullable(byCode.get(system + "|" + code));
  }

  private void index(Finding<?> finding) {
    if (byId.put(finding.id(), finding) != null) {
      throw new IllegalArgumentException("two findings are called " + finding.id());
    }
    Set<String> own = new HashSet<>();
    for (Code code : finding.codes().all()) {
      Finding<?> other = byCode.put(code.token(), finding);
      if (other != null && !own.contains(code.token())) {
        throw new IllegalArgumentException(other + " and " + finding + " share " + code.token());
      }
      own.add(code.token());
    }
    finding.codes().former().forEach(code -> byCode.putIfAbsent(code.token(), finding));
  }

  /** Holds the standard catalogue; made when it is first asked for. */
  private static final class Standard {
    static final Catalogue CATALOGUE =
        new Catalogue(
            Stream.of(
                    Acuities.ENTRIES,
                    Pupils.ENTRIES,
                    Colours.ENTRIES,
                    Fields.ENTRIES,
                    FieldFeatures.ENTRIES,
                    VisualFunctions.ENTRIES,
                    Perimetry.ENTRIES,
                    Discs.ENTRIES,
                    Lids.ENTRIES,
                    Pressures.ENTRIES,
                    Refractions.ENTRIES,
                    Movements.ENTRIES,
                    Alignments.ENTRIES,
                    Corneas.ENTRIES,
                    Segments.ENTRIES,
                    Globes.ENTRIES,
                    Drops.ENTRIES)
                .flatMap(group -> group.all().stream())
                .<Finding<?>>map(finding -> finding)
                .toList());
  }
}
