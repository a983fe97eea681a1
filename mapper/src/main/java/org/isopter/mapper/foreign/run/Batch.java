package org.isopter.mapper.foreign.run;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.document.Versions;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.model.value.Fault;

/**
 * Documents that were read together, and what came of them.
 *
 * @param origins where each document came from
 * @param reading what came of them; its places begin with the number of the document
 */
public record Batch(List<Origin> origins, Reading reading) {

  /** How {@link Versions} names another resource. */
  private static final Pattern OTHER = Pattern.compile("another at /(\\d+)(.*)");

  public Batch {
    origins = List.copyOf(origins);
  }

  /** Returns where the document of a resource came from. */
  public Origin of(ReadResource read) {
    return origins.get(document(read.at()));
  }

  /** Returns where the first document of an examination came from. */
  public Origin of(ReadExam exam) {
    return origins.get(document(exam.from().get(0)));
  }

  /** Returns where a bundle came from that is not as we write it. */
  public Origin of(Reading.Stranger stranger) {
    return origins.get(document(stranger.at()));
  }

  /** Returns why something was not taken, with files in place of the numbers of documents. */
  public Reason withFiles(Reason reason) {
    if (!reason.fault().seen().startsWith("another at /")) {
      return reason;
    }
    Matcher other = OTHER.matcher(reason.fault().seen());
    if (!other.matches()) {
      return reason;
    }
    String place = other.group(2).isEmpty() ? "" : "#" + other.group(2);
    String seen = "another at " + origins.get(Integer.parseInt(other.group(1))) + place;
    Fault fault = reason.fault();
    return new Reason(reason.why(), new Fault(fault.path(), seen, fault.wanted(), fault.advice()));
  }

  Set<Integer> documents(ReadExam exam) {
    return exam.from().stream().map(Batch::document).collect(Collectors.toSet());
  }

  /** Returns the number of the document that a place is in. */
  static int document(String at) {
    int end = at.indexOf('/', 1);
    return at.isEmpty() ? 0 : Integer.parseInt(at, 1, end < 0 ? at.length() : end, 10);
  }
}
