package org.isopter.model.simulate;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Setting;
import org.isopter.model.exam.Status;

/**
 * Invented persons and the examinations of their visits. A person's examinations follow from the
 * seed and the person's number alone, so that any of them can be made apart and in any order. They
 * look like those of a clinic; nothing in them may be taken as epidemiology.
 *
 * @param persons how many persons there are
 * @param seed the same seed makes the same examinations
 */
public record Cohort(int persons, long seed) {

  private static final String RECORDS = "https://quillhaven.example/records";
  private static final String PEOPLE = "https://quillhaven.example/people";
  private static final OffsetDateTime START = OffsetDateTime.parse("2021-01-04T08:00:00Z");

  public Cohort {
    if (persons < 0) {
      throw new IllegalArgumentException(persons + " persons; wanted 0 or more");
    }
  }

  /** Returns the examinations of all persons, made as they are taken: person by person in order. */
  public Stream<Exam> exams() {
    return IntStream.range(0, persons).boxed().flatMap(person -> exams(person).stream());
  }

  /**
   * Returns the examinations of one person, the first visit first.
   *
   * @param person the number of the person, from 0
   */
  public List<Exam> exams(int person) {
    Draw draw = draw(person);
    InventedPerson who = new InventedPerson(draw);
    Party subject = subject(draw, person);
    int visits = draw.pick(Figures.VISITS);
    OffsetDateTime day = START.plusDays(draw.between(0, 730));
    List<Exam> exams = new ArrayList<>();
    int months = 0;
    for (int visit = 1; visit <= visits; visit++) {
      OffsetDateTime performed = day.plusMonths(months).plusMinutes(5L * draw.between(0, 113));
      Header header = header(draw, person, visit, subject, performed);
      Demographics stated = Demographics.years((int) who.age(months), who.sex);
      exams.add(new Exam(header.with(stated), facts(new Visit(who, draw, months), performed)));
      months += draw.between(1, Figures.LONGEST_INTERVAL);
    }
    return exams;
  }

  /** Returns the identifier of a person. */
  public Identifier subject(int person) {
    return Identifier.of(PEOPLE, "gen-p-" + seed + "-" + person);
  }

  /** Returns the group that a person belongs to. */
  public Group group(int person) {
    return new InventedPerson(draw(person)).group;
  }

  /** Returns the side of a person whose group affects one eye, or the side of the loss. */
  org.isopter.model.value.Site side(int person) {
    return new InventedPerson(draw(person)).side;
  }

  private Draw draw(int person) {
    if (person < 0 || person >= persons) {
      throw new IllegalArgumentException("person " + person + "; there are " + persons);
    }
    // Mixed first, so that the persons of one seed are not those of its neighbour moved by one.
    return new Draw(new SplittableRandom(new SplittableRandom(seed).nextLong() + person));
  }

  private static List<org.isopter.model.exam.Fact<?>> facts(Visit visit, OffsetDateTime performed) {
    AcuitySteps.add(visit);
    PupilSteps.add(visit);
    ColourSteps.add(visit);
    FieldSteps.add(visit);
    DiscSteps.add(visit);
    OrbitSteps.add(visit);
    FrontSteps.add(visit, performed);
    return visit.facts();
  }

  private Party subject(Draw draw, int person) {
    String name = draw.pick(Phrases.FIRST) + " " + draw.pick(Phrases.LAST);
    return new Party(Optional.of(subject(person)), when(draw, Likelihood.SUBJECT_NAME, name));
  }

  private Header header(Draw draw, int person, int visit, Party subject, OffsetDateTime performed) {
    return new Header(
        Identifier.of(RECORDS, "gen-" + seed + "-" + person + "-" + visit),
        subject,
        when(draw, Likelihood.PERFORMER, Party.named(draw.pick(Phrases.EXAMINERS))),
        performed,
        draw.chance(Likelihood.PRELIMINARY) ? Status.PRELIMINARY : Status.FINAL,
        Optional.of(draw.pick(List.of(Setting.values()))),
        Optional.empty(),
        when(draw, Likelihood.HEADER_REMARK, draw.pick(Phrases.HEADER_REMARKS)));
  }

  private static <T> Optional<T> when(Draw draw, Likelihood what, T thing) {
    return draw.chance(what) ? Optional.of(thing) : Optional.empty();
  }
}
