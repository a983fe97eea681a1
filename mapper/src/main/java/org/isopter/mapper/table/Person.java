package org.isopter.mapper.table;

import java.time.LocalDate;
import java.time.Period;
import java.util.Optional;

/**
 * What is known of the person besides the examination.
 *
 * @param age the age at the examination in whole years
 * @param sex the administrative sex in FHIR's word
 * @param born the date of birth, which is in no table
 * @param group what the study calls the group of the person
 */
public record Person(
    Optional<Integer> age, Optional<String> sex, Optional<LocalDate> born, Optional<String> group) {

  /** The age that stands for itself and every greater one, where persons are not to be known. */
  public static final int OLDEST = 90;

  /** Nothing is known. */
  public static final Person UNKNOWN =
      new Person(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

  /** Returns a person of an age. */
  public static Person of(Optional<Integer> age, Optional<String> sex) {
    return new Person(age, sex, Optional.empty(), Optional.empty());
  }

  /** Returns a person who was born on a day, at the age of another day. */
  public static Person born(Optional<LocalDate> born, Optional<String> sex, LocalDate on) {
    return new Person(
        born.map(day -> years(day, on)).filter(any -> any >= 0), sex, born, Optional.empty());
  }

  /** Returns this person in a group. */
  public Person in(Optional<String> other) {
    return new Person(age, sex, born, other);
  }

  /** Returns this person at the age that a birthday so many days later would give. */
  public Person bornLater(int days, LocalDate on) {
    Optional<Integer> other =
        born.map(day -> Math.max(0, years(day.plusDays(days), on))).filter(any -> age.isPresent());
    return new Person(other.or(() -> age), sex, Optional.empty(), group);
  }

  /** Returns this person with all ages from {@link #OLDEST} on as one, and no date of birth. */
  public Person pooled() {
    return new Person(age.map(years -> Math.min(years, OLDEST)), sex, Optional.empty(), group);
  }

  private static int years(LocalDate born, LocalDate on) {
    return Period.between(born, on).getYears();
  }
}
