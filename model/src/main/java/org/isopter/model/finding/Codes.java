package org.isopter.model.finding;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * The codes of a finding: those that name a side, and those that leave the side to the body site.
 *
 * @param bySite the codes that hold for one site only
 * @param general the codes that hold for every site, at least one
 * @param refined the codes that hold only beside a certain part
 */
public record Codes(Map<Site, Code> bySite, List<Code> general, List<Refined> refined) {

  /**
   * Codes for one site that say more than the finding does, and hold only where a part agrees.
   *
   * @param part the key of the part
   * @param value what the part must be
   * @param bySite the code for each site
   */
  public record Refined(String part, Concept value, Map<Site, Code> bySite) {

    /** Says whether the codes hold for the panel. */
    public boolean holds(EncodedValue panel) {
      return panel.found(part).orElse(null) instanceof Datum.Coded coded
          && coded.concept().equals(value);
    }
  }

  public Codes {
    bySite = Collections.unmodifiableMap(new LinkedHashMap<>(bySite));
    general = List.copyOf(general);
    refined = List.copyOf(refined);
  }

  /** Returns the codes that are written for a value at a site, the most specific first. */
  public List<Code> at(Site site, EncodedValue panel) {
    List<Code> codes = new ArrayList<>();
    for (Refined more : refined) {
      if (more.holds(panel)) {
        Optional.ofNullable(more.bySite().get(site)).ifPresent(codes::add);
      }
    }
    Optional.ofNullable(bySite.get(site)).ifPresent(codes::add);
    codes.addAll(general);
    return codes;
  }

  /** Returns every code of the finding. */
  public List<Code> all() {
    List<Code> codes = new ArrayList<>();
    refined.forEach(more -> codes.addAll(more.bySite().values()));
    codes.addAll(bySite.values());
    codes.addAll(general);
    return codes;
  }
}
