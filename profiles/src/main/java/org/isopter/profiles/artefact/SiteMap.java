package org.isopter.profiles.artefact;

import java.util.List;
import java.util.Locale;
import org.hl7.fhir.r4.model.CanonicalType;
import org.hl7.fhir.r4.model.ConceptMap;
import org.hl7.fhir.r4.model.ConceptMap.ConceptMapGroupComponent;
import org.hl7.fhir.r4.model.Enumerations.ConceptMapEquivalence;
import org.hl7.fhir.r4.model.UriType;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.model.value.Site;
import org.isopter.model.wire.Lists;

/** Makes the map from other codes of the right eye, the left eye and both to those used here. */
final class SiteMap {

  static final String ID = "eye-site-map";

  private SiteMap() {}

  static ConceptMap make() {
    ConceptMap map =
        Metadata.fill(
            new ConceptMap(), ID, Canonical.BASE + "/ConceptMap/" + ID, "Other codes of the eyes");
    map.setDescription(
        "Codes of an eye, or of a side beside an eye, that other systems use, and the body site that"
            + " is read from them. Withdrawn codes are read and never written.");
    map.setCopyright(Metadata.notices(List.of(Site.RIGHT.code())));
    map.setSource(new UriType("http://snomed.info/sct?fhir_vs"));
    map.setTarget(new CanonicalType(Canonical.valueSet(Lists.EYE_SITE.valueSet())));
    ConceptMapGroupComponent group = map.addGroup().setSource(Code.SNOMED).setTarget(Code.SNOMED);
    Rows.read("eye-sites.tsv").forEach(row -> add(group, row));
    return map;
  }

  private static void add(ConceptMapGroupComponent group, List<String> row) {
    Code target = Site.valueOf(row.get(2).toUpperCase(Locale.ROOT)).code();
    group
        .addElement()
        .setCode(row.get(0))
        .setDisplay(row.get(1))
        .addTarget()
        .setCode(target.code())
        .setDisplay(target.display())
        .setEquivalence(ConceptMapEquivalence.fromCode(row.get(3)))
        .setComment(row.get(4));
  }
}
