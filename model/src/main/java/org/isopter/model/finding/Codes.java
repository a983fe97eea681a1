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
 * @param refined the codes that hold only beside certain answers
 * @param former the codes that older versions wrote: they are read, and never written
 */
public record Codes(
    Map<Site, Code> bySite, List<Code> general, List<Refined> refined, List<Code> former) {

  /**
   * Codes that say more than the finding does, and hold only where the fact agrees.
   *
   * @param when what the fact must say
   * @param bySite the code for each site; a site that is missing has none
   */
  public record Refined(When when, Map<Site, Code> bySite) {

    public Refined {
      bySite = Collections.unmodifiableMap(new LinkedHashMap<>(bySite));
    }

    /** Says whether the codes name a side; one code for every site leaves it to the body site. */
    public boolean isSided() {
      return bySite.size() < Site.EACH_OR_BOTH.size() || codes().size() > 1;
    }

    /** Returns the codes, each once. */
    public List<Code> codes() {
      return bySite.values().stream().distinct().toList();
    }
  }

  public Codes {
    bySite = Collections.unmodifiableMap(new LinkedHashMap<>(bySite));
    general = List.copyOf(general);
    refined = List.copyOf(refined);
    former = List.copyOf(former);
  }

  /** Returns the codes that are written for a value at a site, the most specific first. */
  public List<Code> at(Site site, EncodedValue panel, Optional<Concept> method) {
    List<Code> codes = new ArrayList<>();
    for (Refined more : refined) {
      if (more.when().holds(panel, method)) {
        Optional.ofNullable(more.bySite().get(site)).ifPresent(codes::add);
      }
    }
    Optional.ofNullable(bySite.get(site)).ifPresent(codes::add);
    codes.addAll(general);
    return codes;
  }

  /** Returns every code of the finding that is written. */
  public List<Code> all() {
    List<Code> codes = new ArrayList<>();
    refined.forEach(more -> codes.addAll(more.bySite().values()));
    codes.addAll(bySite.values());
    codes.addAll(general);
    return codes.stream().distinct().toList();
  }
}
