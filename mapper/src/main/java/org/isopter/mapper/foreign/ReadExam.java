package org.isopter.mapper.foreign;

import org.isopter.model.exam.Exam;

/**
 * An examination that was read, with everything that came along and found no place in it.
 *
 * @param exam the examination
 * @param carried what is written out again with it
 * @param rule the id of the rule by which its observations were put together; empty for a bundle of
 *     ours
 */
public record ReadExam(Exam exam, Carried carried, String rule) {}
