package org.isopter.mapper.foreign.reading;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.value.Fault;

/**
 * What came of reading one document, or several together.
 *
 * @param exams the examinations, in the order in which the first resource of each stood
 * @param resources every resource of the document, in its order
 * @param carried what is carried where there is no examination to carry it
 * @param strangers the bundles that hold our panel and yet are not as we write them; they were read
 *     as those of others are
 */
public record Reading(
    List<ReadExam> exams, List<ReadResource> resources, Carried carried, List<Stranger> strangers) {

  /**
   * A bundle that is not as we write it.
   *
   * @param at where it stands, as a JSON pointer; empty for the document itself
   * @param faults why it is none of ours
   */
  public record Stranger(String at, List<Fault> faults) {
    public Stranger {
      faults = List.copyOf(faults);
    }
  }

  public Reading {
    exams = List.copyOf(exams);
    resources = List.copyOf(resources);
    strangers = List.copyOf(strangers);
  }

  /** Returns a reading without strangers: each bundle that claims to be ours is. */
  public static Reading of(List<ReadExam> exams, List<ReadResource> resources, Carried carried) {
    return new Reading(exams, resources, carried, List.of());
  }

  /** Returns this with the bundles that are not as we write them. */
  public Reading with(List<Stranger> others) {
    return new Reading(exams, resources, carried, others);
  }

  /** Returns this with more resources that are carried, by its first examination if it has one. */
  public Reading carryingToo(List<Carried.Whole> more) {
    if (more.isEmpty()) {
      return this;
    }
    if (exams.isEmpty()) {
      return new Reading(exams, resources, carried.and(more), strangers);
    }
    List<ReadExam> all = new ArrayList<>(exams);
    ReadExam first = all.get(0);
    all.set(0, first.carrying(first.carried().and(more)));
    return new Reading(all, resources, carried, strangers);
  }

  /** Returns this as the reading of a document that stands at a place. */
  public Reading within(String at) {
    List<ReadResource> moved =
        resources.stream()
            .map(read -> new ReadResource(at + read.at(), read.resource(), read.outcome()))
            .toList();
    return of(exams.stream().map(exam -> exam.within(at)).toList(), moved, carried);
  }

  /** Returns readings as one; at most the last of them carries anything of its own. */
  public static Reading together(List<Reading> readings) {
    List<ReadExam> exams = new ArrayList<>();
    List<ReadResource> resources = new ArrayList<>();
    List<Stranger> strangers = new ArrayList<>();
    Carried carried = Carried.NOTHING;
    for (Reading reading : readings) {
      exams.addAll(reading.exams());
      resources.addAll(reading.resources());
      strangers.addAll(reading.strangers());
      carried = reading.carried().isEmpty() ? carried : reading.carried();
    }
    return new Reading(exams, resources, carried, strangers);
  }

  /** Returns how many resources became this: {@code exact}, {@code translated} or {@code kept}. */
  public long count(String word) {
    return resources.stream().filter(r -> r.outcome().word().equals(word)).count();
  }
}
