package org.isopter.model.clinical.pupil;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A sign that the table of causes reads, with the words that it may have. The usual words come
 * before the bar: a row of the table that does not speak of the sign allows those alone.
 */
public enum PupilSign {
  DIRECT("direct response", "brisk | sluggish tonic absent"),
  CONSENSUAL("consensual response", "brisk | sluggish tonic absent"),
  NEAR("near response", "brisk | sluggish tonic absent"),
  /** Whether both pupils answer alike when this eye is lit: one absent and the other not differ. */
  LIT("answers of the two pupils with one eye lit", "alike | differ"),
  /** Against the usual span of the light it was measured in. */
  SIZE("size", "small middle large |"),
  OUTLINE("outline", "round | odd"),
  /** Whether it widens more slowly than its fellow in the dark. */
  DILATION_LAG("dilation lag", "absent | present"),
  /** Whether parts of its edge move and others do not. */
  SEGMENTAL_MOVEMENT("segmental movement", "absent | present"),
  /** Whether it lies off the centre of the iris. */
  CORECTOPIA("corectopia", "absent | present"),
  LID("upper lid", "up | low"),
  MOVEMENT("eye movements", "full | up third abduction several"),
  PRESSURE("pressure", "under-22 22-to-39 | 40-or-more"),
  FRONT("front of the eye", "quiet red inner |"),
  SWEATING("facial sweating", "normal | less"),
  COCAINE("cocaine test", "wider | unchanged narrower"),
  APRACLONIDINE("apraclonidine test", "unchanged narrower | wider"),
  HYDROXYAMFETAMINE("hydroxyamfetamine test", "wider | unchanged narrower"),
  /** Of a strength at which a healthy pupil does not answer. */
  WEAK_PILOCARPINE("weak pilocarpine test", "unchanged | narrower wider"),
  /** Of a strength at which a healthy pupil answers. */
  STRONG_PILOCARPINE("strong pilocarpine test", "narrower | unchanged wider"),
  UNEQUAL(
      "size of both pupils in bright and in dim light",
      "none | right-light right-dark right-alike left-light left-dark left-alike"),
  /** Great is more than 1 mm. */
  AMOUNT("amount of the difference", "small great |"),
  AFFERENT("relative afferent defect", "none | right left"),
  /** Any loss may stand beside a row that does not speak of the fields. */
  FIELD("fields by confrontation", "full right-eye left-eye right-half left-half other |"),
  DOUBLE("double vision", "none | binocular");

  private static final Set<PupilSign> OF_THE_PAIR =
      Set.of(UNEQUAL, AMOUNT, AFFERENT, FIELD, DOUBLE);

  private static final Set<PupilSign> BESIDE_THE_PUPILS =
      Set.of(LID, MOVEMENT, PRESSURE, FRONT, SWEATING, FIELD, DOUBLE, OUTLINE, CORECTOPIA);

  /** What is computed from other signs, and tests with drugs, are not named as missing. */
  private static final Set<PupilSign> NEVER_MISSED =
      Set.of(
          LIT,
          AMOUNT,
          COCAINE,
          APRACLONIDINE,
          HYDROXYAMFETAMINE,
          WEAK_PILOCARPINE,
          STRONG_PILOCARPINE);

  private final String title;
  private final Set<String> usual;
  private final Set<String> words;

  PupilSign(String title, String words) {
    this.title = title;
    String[] parts = (words + " ").split("\\|", 2);
    this.usual = split(parts[0]);
    this.words = new LinkedHashSet<>(usual);
    this.words.addAll(split(parts[1]));
  }

  static Set<String> split(String words) {
    return words.isBlank() ? Set.of() : new LinkedHashSet<>(List.of(words.trim().split(" +")));
  }

  /** Returns the name of the sign. */
  public String title() {
    return title;
  }

  /** Returns every word that the sign may have, the usual ones first. */
  public Set<String> words() {
    return words;
  }

  /** Returns the words that depart from nothing. */
  public Set<String> usual() {
    return usual;
  }

  /** Says whether the sign compares the eyes. */
  public boolean isOfThePair() {
    return OF_THE_PAIR.contains(this);
  }

  /** Says whether the sign is of how the pupils stand to each other or answer. */
  public boolean isOfThePupils() {
    return !BESIDE_THE_PUPILS.contains(this);
  }

  boolean isNamedAsMissing() {
    return !NEVER_MISSED.contains(this);
  }

  /** Returns the name by which the rows of the table write the sign. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
