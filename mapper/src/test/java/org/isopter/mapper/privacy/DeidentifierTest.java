package org.isopter.mapper.privacy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.isopter.mapper.pool.Pools;
import org.isopter.mapper.table.FactOrigin;
import org.isopter.mapper.table.Person;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;

/** Pseudonyms join what belongs together and nothing else; dates move alike. */
class DeidentifierTest {

  private static final OffsetDateTime FIRST = OffsetDateTime.parse("2026-03-03T09:10:00+01:00");

  private final Deidentifier deidentifier = new Deidentifier(Pools.KEY, false);

  /** The digits are those of the hmac module of Python 3.11 for the same key and bytes. */
  @Test
  void thePseudonymIsTheStandardKeyedHash() {
    assertEquals("08eae573a4f6bb606f0f", Pools.KEY.pseudonym("person", "id p-1"));
    assertNotEquals(Pools.KEY.pseudonym("a", "b"), Pools.KEY.pseudonym("ab", ""));
  }

  @Test
  void aPersonKeepsOnePseudonymAndEveryInterval() {
    Exam one = apply(exam("1", "p-1", FIRST));
    Exam later = apply(exam("2", "p-1", FIRST.plusDays(100).plusHours(3)));
    Exam other = apply(exam("3", "p-2", FIRST));
    assertEquals(one.header().subject(), later.header().subject());
    assertNotEquals(one.header().subject(), other.header().subject());
    assertNotEquals(one.header().id(), later.header().id());
    long days = Duration.between(one.header().performed(), later.header().performed()).toDays();
    assertEquals(0, days % 7);
    assertTrue(Math.abs(days - 100) < 7, days + " days");
    assertTrue(one.header().performed().getYear() >= 2126);
    assertEquals(LocalTime.MIDNIGHT, one.header().performed().toLocalTime());
  }

  @Test
  void anotherKeyGivesOtherPseudonyms() {
    Deidentifier elsewhere =
        new Deidentifier(
            SecretKey.of("another 7b1e05c2d94f8a63 of enough bytes 1907355284").orThrow(), false);
    PooledExam pooled = pooled(exam("1", "p-1", FIRST));
    assertNotEquals(
        apply(pooled.exam()).header().subject(), elsewhere.apply(pooled).exam().header().subject());
  }

  @Test
  void datesMoveBackWhereToolsTakeNoneInTheFuture() {
    Deidentifier back = deidentifier.moving(DateShift.BACK);
    for (int person = 0; person < 500; person++) {
      Exam exam = exam("1", "p-" + person, FIRST);
      LocalDate day = back.apply(pooled(exam)).exam().header().performed().toLocalDate();
      assertTrue(day.isBefore(FIRST.toLocalDate()), "moved to " + day);
      assertTrue(day.isAfter(FIRST.toLocalDate().minusYears(51)), "moved to " + day);
    }
  }

  @Test
  void anExaminerAndAnInstrumentHavePseudonymsWhereWantedAndAreDroppedOtherwise() {
    Fact<?> fact =
        Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.NOT_DONE).with("Device 7");
    Header plain = exam("1", "p-1", FIRST).header();
    Header header =
        new Header(
            plain.id(),
            plain.subject(),
            Optional.of(Party.named("Dr Thistlecombe")),
            plain.performed(),
            plain.status(),
            plain.setting(),
            plain.amends(),
            plain.remark());
    PooledExam pooled = pooled(new Exam(header, List.of(fact)));
    Exam dropped = deidentifier.apply(pooled).exam();
    assertTrue(dropped.header().performer().isEmpty() && dropped.facts().get(0).device().isEmpty());
    Exam kept = deidentifier.keeping(List.of(Kept.values())).apply(pooled).exam();
    String all = kept.header().performer() + " " + kept.facts().get(0).device();
    assertTrue(all.matches("(?s).*x[0-9a-f]{20}.*d[0-9a-f]{20}.*"), all);
    assertFalse(all.contains("Thistlecombe") || all.contains("Device 7"), all);
  }

  @Test
  void agesFromNinetyOnAreOne() {
    assertEquals(Optional.of(90), age(97));
    assertEquals(Optional.of(90), age(91));
  }

  /**
   * Whoever knows a birthday would know when two visits were between which an age changes. Of ages
   * without a date of birth, as many as chance would have it change without a birthday.
   */
  @Test
  void anAgeThatChangesTellsNoBirthday() {
    int pairs = 2000;
    double without = ups(40, 40, pairs) / pairs;
    double with = ups(40, 41, pairs) / pairs;
    // A quarter a year less, a quarter a year more: two draws of these differ by one so often.
    assertEquals(0.25, without, 4 * Math.sqrt(0.25 * 0.75 / pairs));
    assertEquals(0.375, with, 4 * Math.sqrt(0.375 * 0.625 / pairs));
  }

  private double ups(int before, int after, int pairs) {
    return IntStream.range(0, pairs)
        .filter(pair -> age("a" + pair, after) == age("b" + pair, before) + 1)
        .count();
  }

  private int age(String examination, int years) {
    PooledExam exam = pooled(exam(examination, "p-1", FIRST));
    Person person = Person.of(Optional.of(years), Optional.empty());
    return deidentifier.apply(exam.with(exam.exam(), person)).person().age().orElseThrow();
  }

  @Test
  void aShortKeyIsRefused() {
    Result<SecretKey> refused = SecretKey.of(" short \n");
    assertInstanceOf(Result.Refused.class, refused);
    assertTrue(refused.faults().get(0).toString().contains("24 bytes"));
  }

  private Optional<Integer> age(int years) {
    PooledExam exam = pooled(exam("1", "p-1", FIRST));
    Person person = Person.of(Optional.of(years), Optional.empty());
    return deidentifier.apply(exam.with(exam.exam(), person)).person().age();
  }

  private Exam apply(Exam exam) {
    return deidentifier.apply(pooled(exam)).exam();
  }

  private static Exam exam(String id, String person, OffsetDateTime at) {
    Header header = Header.of(Identifier.of(id), Party.of(Identifier.of(person)), at);
    return new Exam(
        header, List.of(Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.NOT_DONE)));
  }

  private static PooledExam pooled(Exam exam) {
    return new PooledExam(exam, Person.UNKNOWN, List.of(FactOrigin.of("1", 0)));
  }
}
