package org.isopter.mapper.foreign;

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

  /** Returns how many resources became this: {@code exact}, {@code translated} or {@code kept}. */
  public long count(String word) {
    return resources.stream().filter(r -> r.treated().word().equals(word)).count();
  }
}
