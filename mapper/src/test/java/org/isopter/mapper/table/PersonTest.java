package org.isopter.mapper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.exam.AdministrativeSex;
import org.isopter.model.exam.Demographics;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** What is known of a person, from whoever says it. */
class PersonTest {

  private static final LocalDate DAY = LocalDate.parse("2026-03-03");
  private static final Person STATED =
      Person.stated(Demographics.years(34, AdministrativeSex.FEMALE));

  @Test
  void anAgeOfASmallChildIsInWholeYears() {
    Map.of(
            "23 months", 1,
            "24 months", 2,
            "104 weeks", 1,
            "60 weeks", 1,
            "51 weeks", 0,
            "90 days", 0,
            "7 years", 7)
        .forEach((text, years) -> assertEquals(Optional.of(years), age(text).age(), text));
  }

  @Test
  void whatOneSourceDoesNotSayTheOtherDoes() {
    Person patient = Person.born(Optional.of(LocalDate.parse("1990-01-01")), Optional.empty(), DAY);
    assertEquals(
        new Person(Optional.of(36), Optional.of("female"), patient.born(), Optional.empty()),
        patient.or(STATED));
    assertEquals(STATED, Person.UNKNOWN.or(STATED));
    assertEquals(STATED, STATED.or(Person.of(Optional.of(80), Optional.of("male"))));
  }

  /** A date of birth after the examination is a slip, and no age may be counted from it. */
  @Test
  void aBirthAfterTheExaminationIsNotCountedFrom() {
    Person patient = Person.born(Optional.of(LocalDate.parse("2027-01-01")), Optional.empty(), DAY);
    assertEquals(Optional.of(34), patient.or(STATED).bornLater(10, DAY).age());
  }

  private static Person age(String text) {
    String[] words = text.split(" ", -1);
    Unit unit =
        Map.of("months", Unit.MONTH, "weeks", Unit.WEEK, "days", Unit.DAY, "years", Unit.YEAR)
            .get(words[1]);
    return Person.stated(
        new Demographics(Optional.of(Quantity.of(words[0], unit)), Optional.empty()));
  }
}
