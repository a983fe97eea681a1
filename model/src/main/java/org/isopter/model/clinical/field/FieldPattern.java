package org.isopter.model.clinical.field;

import org.isopter.model.finding.Citation;

/** The pattern that the losses of both eyes make together. */
public enum FieldPattern {
  NO_REGION_REDUCED(
      "No region that was tested is reduced; confrontation misses many losses.", Source.MISSED),
  ONE_EYE("Loss in one eye only.", Source.PATHWAY),
  ONE_EYE_CENTRAL("Central loss in one eye only.", Source.PATHWAY),
  ONE_EYE_ALTITUDINAL("Altitudinal loss in one eye only.", Source.MEMORY),
  ONE_EYE_TEMPORAL("Loss of the temporal half in one eye only.", Source.PATHWAY),
  ONE_EYE_ALL("Loss of all quadrants in one eye only.", Source.MEMORY),
  JUNCTIONAL("Central or total loss in one eye with temporal loss in the other.", Source.JUNCTION),
  BITEMPORAL("Temporal loss in both eyes; the vertical meridian helps to tell.", Source.TEMPORAL),
  BITEMPORAL_UPPER(
      "Upper temporal loss in both eyes; the vertical meridian decides whether it is of the"
          + " chiasm at all.",
      Source.TEMPORAL),
  BITEMPORAL_LOWER(
      "Lower temporal loss in both eyes; the vertical meridian helps to tell.", Source.TEMPORAL),
  BINASAL("Nasal loss in both eyes: disease of both eyes or nerves first.", Source.BINASAL),
  HOMONYMOUS_HALF("Loss in the same half of both eyes' fields.", Source.PATHWAY),
  HOMONYMOUS_UPPER("Loss in the same upper quadrant of both eyes' fields.", Source.PATHWAY),
  HOMONYMOUS_LOWER("Loss in the same lower quadrant of both eyes' fields.", Source.PATHWAY),
  HOMONYMOUS_SECTOR("Loss of the same sector of both eyes' fields.", Source.PATHWAY),
  BOTH_EYES_ALL("Loss of all quadrants in both eyes.", Source.DIFFERENTIAL),
  BOTH_EYES_CENTRAL("Central loss in both eyes.", Source.COMMON),
  BOTH_EYES_ALTITUDINAL("Loss of the same upper or lower half in both eyes.", Source.MEMORY),
  OTHER("Losses of both eyes that make no pattern of the table.", Source.PATHWAY);

  /** Where the rows of the table come from. */
  private enum Source {
    PATHWAY(
        "AJNR 2007;28:3 Table 1; Trobe; NOVEL, University of Utah; congruity: Kedar 2007, AJO"
            + " 143:772, abstract; spared crescent from memory"),
    JUNCTION("AJNR 2007;28:3 Table 1: junction; a disease of each eye: common practice, no source"),
    TEMPORAL(
        "AJNR 2007;28:3 Table 1: chiasm; Sowka and Luong, Optometry 2009;80:232: tilted discs with"
            + " bitemporal loss; Schaefer, EyeNet, November 2017: bitemporal loss that crosses the"
            + " vertical meridian; from above and below from memory"),
    BINASAL(
        "Tufan 2013, Turk J Ophthalmol 43:371; O'Connell and Du Boulay, J Neurol Neurosurg"
            + " Psychiatry 36:697; Bryan, Pomeranz and Smith 2014, Proc Bayl Univ Med Cent 27(4); further"
            + " causes from memory"),
    DIFFERENTIAL("from memory; a list of causes of narrow fields was seen by its headings alone"),
    MISSED(
        "Kerr 2010, Neurology 74:1184, abstract: most confrontation tests were insensitive; Johnson"
            + " and Baloh 1991, J Natl Med Assoc 83:895, abstract: 40 % of anterior, 68 % of"
            + " posterior losses found"),
    COMMON("common practice, no source"),
    MEMORY("from memory");

    private final Citation citation;

    Source(String text) {
      this.citation = new Citation(text);
    }
  }

  private final String words;
  private final Source source;

  FieldPattern(String words, Source source) {
    this.words = words;
    this.source = source;
  }

  /** Returns the pattern in a sentence. */
  public String words() {
    return words;
  }

  /** Returns where the pattern's places are published. */
  public Citation source() {
    return source.citation;
  }
}
