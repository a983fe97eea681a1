package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.List;

/**
 * What came of reading one document.
 *
 * @param exams the examinations, in the order in which the first resource of each stood
 * @param resources every resource of the document, in its order
 * @param carried what is carried where there is no examination to carry it
 */
public record Reading(List<ReadExam> exams, List<ReadResource> resources, Carried carried) {

  public Reading {
    exams = List.copyOf(exams);
    resources = List.copyOf(resources);
  }

  /** Returns this as the reading of a document that stands at a place. */
  Reading within(String at) {
    List<ReadResource> moved =
        resources.stream()
            .map(read -> new ReadResource(at + read.at(), read.resource(), read.treated()))
            .toList();
    return new Reading(exams.stream().map(exam -> exam.within(at)).toList(), moved, carried);
  }

  /** Returns readings as one; at most the last of them carries anything of its own. */
  static Reading together(List<Reading> readings) {
    List<ReadExam> exams = new ArrayList<>();
    List<ReadResource> resources = new ArrayList<>();
    Carried carried = Carried.NOTHING;
    for (Reading reading : readings) {
      exams.addAll(reading.exams());
      resources.addAll(reading.resources());
      carried = reading.carried().isEmpty() ? carried : reading.carried();
    }
    return new Reading(exams, resources, carried);
  }

  /** Returns how many resources became this: {@code exact}, {@code translated} or {@code kept}. */
  public long count(String word) {
    return resources.stream().filter(r -> r.treated().word().equals(word)).count();
  }
}
