package org.isopter.mapper.message;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.io.Sha256;
import org.isopter.mapper.json.Raw;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Identifier;

/**
 * A message in the making: what it is about, and the results.
 *
 * @param orders the records that it speaks of
 * @param written the facts of the last of them that have their form in a message, by their numbers
 */
record MessageText(List<OrderText> orders, List<Integer> written) {

  /** OBX-4 holds twenty letters, and a part has a point and its number behind that of the whole. */
  private static final int SUB_ID = 10;

  MessageText {
    orders = List.copyOf(orders);
    written = List.copyOf(written);
  }

  /**
   * Returns the message of facts, each by its number and in the form that is chosen for it.
   *
   * @param sent the sub-ids of what was sent before of the same record, and is corrected now
   */
  static MessageText of(
      Exam exam, Identifier subject, Map<Integer, Raw.Obj> chosen, List<String> sent) {
    String usual = RecordStatus.of(exam.header().status());
    List<FactKey> keys = exam.keys();
    List<SegmentDraft> results = new ArrayList<>();
    List<Integer> written = new ArrayList<>();
    chosen.forEach(
        (at, form) -> {
          String id = subId(keys.get(at));
          String status = sent.contains(id) ? RecordStatus.CORRECTED : usual;
          Optional<List<SegmentDraft>> segments = new ResultSegments(form, status).read(id);
          segments.ifPresent(
              all -> {
                results.addAll(all);
                written.add(at);
              });
        });
    String whole = sent.isEmpty() ? usual : RecordStatus.CORRECTED;
    return new MessageText(List.of(new OrderText(exam.header(), subject, whole, results)), written);
  }

  /** The same measurement of a record has the same sub-id in each of its messages. */
  private static String subId(FactKey key) {
    return Sha256.hex(key.text()).substring(0, SUB_ID);
  }

  /** Returns the order of the record that the message is of. */
  OrderText order() {
    return orders.get(orders.size() - 1);
  }

  /** Returns this message taking back what one before it said and this one does not. */
  MessageText takingBack(OrderText former) {
    if (order().isOfSameRecord(former)) {
      List<SegmentDraft> gone = former.takenBackBut(order().subIds()).results();
      return new MessageText(List.of(order().after(gone)), written);
    }
    return new MessageText(List.of(former.takenBackBut(List.of()), order()), written);
  }

  /** Returns the message that takes all of this one back. */
  MessageText takenBack() {
    return new MessageText(List.of(order().takenBackBut(List.of())), List.of());
  }

  /** Returns the segments, each with its end. */
  String text() {
    String body = lines(orders.stream().flatMap(one -> one.segments().stream()).toList());
    return lines(List.of(head(body))) + body;
  }

  private static String lines(List<SegmentDraft> segments) {
    StringBuilder text = new StringBuilder();
    segments.forEach(segment -> text.append(segment.text()).append('\r'));
    return text.toString();
  }

  /** The first field of a header is the mark before it, so that each stands one place earlier. */
  private SegmentDraft head(String body) {
    OffsetDateTime performed = order().header().performed();
    return new SegmentDraft("MSH")
        .put(1, SegmentText.MARKS)
        .put(2, "ISOPTER")
        .put(6, SegmentText.time(performed))
        .put(8, "ORU^R01^ORU_R01")
        .put(9, ControlId.of(order().header().id() + body))
        .put(10, "P")
        .put(11, "2.5.1")
        .put(17, "UNICODE UTF-8");
  }
}
