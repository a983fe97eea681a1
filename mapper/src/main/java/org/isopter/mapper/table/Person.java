package org.isopter.mapper.table;

import java.util.Optional;

/**
 * What is known of the person besides the examination.
 *
 * @param age the age at the examination in whole years
 * @param sex the administrative sex in FHIR's word
 */
public record Person(Optional<Integer> age, Optional<String> sex) {

  /** The age that stands for itself and every greater one, where persons are not to be known. */
  public static final int OLDEST = 90;

  /** Nothing is known. */
  public static final Person UNKNOWN = new Person(Optional.empty(), Optional.empty());

  /** Returns this person with all ages from {@link #OLDEST} on as one. */
  public Person pooled() {
    return new Person(age.map(years -> Math.min(years, OLDEST)), sex);
  }
}
