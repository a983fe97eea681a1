package org.isopter.mapper.message;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Status;

/**
 * The text of a message: what it is about, and the results.
 *
 * @param text the segments, each with its end
 * @param written the facts that have their form in a message, by their numbers
 */
record MessageText(String text, List<Integer> written) {

  /** HL7 table 0085 and 0123: final, and corrected. */
  private static final String FINAL = "F";

  private static final String CORRECTED = "C";

  MessageText {
    written = List.copyOf(written);
  }

  /** Returns the message of facts, each by its number and in the form that is chosen for it. */
  static MessageText of(Header header, Identifier subject, Map<Integer, Raw.Obj> chosen) {
    String status = header.status() == Status.FINAL ? FINAL : CORRECTED;
    List<SegmentDraft> results = new ArrayList<>();
    List<Integer> written = new ArrayList<>();
    int number = 1;
    for (Map.Entry<Integer, Raw.Obj> one : chosen.entrySet()) {
      Optional<List<SegmentDraft>> segments =
          new ResultSegments(one.getValue(), status)
              .read(number, String.valueOf(written.size() + 1));
      if (segments.isPresent()) {
        results.addAll(segments.get());
        written.add(one.getKey());
        number += 1 + one.getValue().objects("component").size();
      }
    }
    List<SegmentDraft> all = new ArrayList<>(List.of(person(subject), order(header, status)));
    all.addAll(results);
    String body = lines(all);
    return new MessageText(lines(List.of(head(header, body))) + body, written);
  }

  private static String lines(List<SegmentDraft> segments) {
    StringBuilder text = new StringBuilder();
    segments.forEach(segment -> text.append(segment.text()).append('\r'));
    return text.toString();
  }

  /** The first field of a header is the mark before it, so that each stands one place earlier. */
  private static SegmentDraft head(Header header, String body) {
    return new SegmentDraft("MSH")
        .put(1, SegmentText.MARKS)
        .put(2, "ISOPTER")
        .put(6, SegmentText.time(header.performed()))
        .put(8, "ORU^R01^ORU_R01")
        .put(9, ControlId.of(header.id() + body))
        .put(10, "P")
        .put(11, "2.5.1")
        .put(17, "UNICODE UTF-8");
  }

  /** The name is not stated: a person is known by the identifier (type U, HL7 table 0200). */
  private static SegmentDraft person(Identifier subject) {
    return new SegmentDraft("PID")
        .put(1, "1")
        .put(3, SegmentText.identified(subject.value(), subject.system(), "^^^", "&"))
        .put(5, "^^^^^^U");
  }

  private static SegmentDraft order(Header header, String status) {
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
