package org.isopter.mapper.table;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.Period;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.exam.AdministrativeSex;
import org.isopter.model.exam.Demographics;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

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

  /** How many of a unit are a year. */
  private static final Map<Unit, BigDecimal> A_YEAR =
      Map.of(
          Unit.YEAR, BigDecimal.ONE,
          Unit.MONTH, new BigDecimal(12),
          Unit.WEEK, new BigDecimal("52.18"),
          Unit.DAY, new BigDecimal("365.25"));

  /** Nothing is known. */
  public static final Person UNKNOWN =
      new Person(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

  /** Returns a person of an age. */
  public static Person of(Optional<Integer> age, Optional<String> sex) {
    return new Person(age, sex, Optional.empty(), Optional.empty());
  }

  /** Returns a person as the header of an examination states them. */
  public static Person stated(Demographics stated) {
    return of(stated.age().flatMap(Person::wholeYears), stated.sex().map(AdministrativeSex::word));
  }

  private static Optional<Integer> wholeYears(Quantity age) {
    return Optional.ofNullable(A_YEAR.get(age.unit()))
        .map(length -> age.value().divideToIntegralValue(length).intValue());
  }

  /** Returns this person, and of another what this one does not say. */
  public Person or(Person other) {
    // Without an age, a date of birth was after the examination, and is none to count from.
    Optional<LocalDate> day = born.filter(any -> age.isPresent());
    return new Person(age.or(other::age), sex.or(other::sex), day, group.or(other::group));
  }

  /** Returns a person who was born on a day, at the age of another day. */
  public static Person born(Optional<LocalDate> born, Optional<String> sex, LocalDate on) {
    return new Person(
        born.filter(day -> !day.isAfter(on)).map(day -> years(day, on)),
        sex,
        born,
        Optional.empty());
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

  /** Returns this person, older by so many years where the age is known and no date of birth. */
  public Person older(int years) {
    Optional<Integer> other =
        born.isPresent() ? age : age.map(before -> Math.max(0, before + years));
    return new Person(other, sex, born, group);
  }

  /** Returns this person with all ages from {@link #OLDEST} on as one, and no date of birth. */
  public Person pooled() {
    return new Person(age.map(years -> Math.min(years, OLDEST)), sex, Optional.empty(), group);
  }

  private static int years(LocalDate born, LocalDate on) {
    return Period.between(born, on).getYears();
  }
}
