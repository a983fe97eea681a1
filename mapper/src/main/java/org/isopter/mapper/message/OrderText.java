package org.isopter.mapper.message;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;

/**
 * What a message says of one record: whom it is about, the record as an order, and its results.
 *
 * @param header the header of the record
 * @param subject whom it is about
 * @param status how far the results have come (HL7 table 0123)
 * @param results the results, each with its remarks and parts
 */
record OrderText(Header header, Identifier subject, String status, List<SegmentDraft> results) {

  private static final int SUB_ID = 4;

  OrderText {
    results = List.copyOf(results);
  }

  /** Returns the sub-ids of the results and of their parts. */
  List<String> subIds() {
    return results.stream().map(one -> one.get(SUB_ID)).filter(id -> !id.isEmpty()).toList();
  }

  /** Returns the same order with its results taken back, but those of some sub-ids. */
  OrderText takenBackBut(List<String> kept) {
    List<SegmentDraft> gone =
        results.stream()
            .filter(one -> one.isNamed("OBX") && !kept.contains(one.get(SUB_ID)))
            .map(SegmentDraft::deleted)
            .toList();
    return new OrderText(header, subject, RecordStatus.CORRECTED, gone);
  }

  /** Returns this order with results before its own. */
  OrderText after(List<SegmentDraft> others) {
    List<SegmentDraft> all = new ArrayList<>(others);
    all.addAll(results);
    return new OrderText(header, subject, status, all);
  }

  boolean isOfSameRecord(OrderText other) {
    return header.id().equals(other.header.id()) && subject.equals(other.subject);
  }

  /** Returns the segments, the results numbered from 1. */
  List<SegmentDraft> segments() {
    List<SegmentDraft> all = new ArrayList<>(List.of(person(), order()));
    int number = 1;
    for (SegmentDraft one : results) {
      all.add(one.isNamed("OBX") ? one.numbered(number++) : one);
    }
    return all;
  }

  /** The name is not stated: a person is known by the identifier (type U, HL7 table 0200). */
  private SegmentDraft person() {
    return new SegmentDraft("PID")
        .put(1, "1")
        .put(3, SegmentText.identified(subject.value(), subject.system(), "^^^", "&"))
        .put(5, "^^^^^^U");
  }

  private SegmentDraft order() {
    Identifier record = header.id();
    return new SegmentDraft("OBR")
        .put(1, "1")
        .put(3, SegmentText.identified(record.value(), record.system(), "^", "^"))
        .put(4, "EXAM^Eye examination^L")
        .put(7, SegmentText.time(header.performed()))
        .put(22, SegmentText.time(header.performed()))
        .put(25, status);
  }
}
