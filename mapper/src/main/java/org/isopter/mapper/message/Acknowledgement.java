package org.isopter.mapper.message;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.isopter.mapper.v2.V2Fault;
import org.isopter.mapper.v2.V2Header;

/**
 * What a receiver answers to a message (ACK of HL7 v2.5.1, section 2.9): taken, in error, or
 * rejected. It holds nothing of what the message says of a person.
 *
 * @param verdict whether the message is taken
 * @param header the header of the message; empty where none could be read
 * @param fault why it is not taken; empty where it is
 */
public record Acknowledgement(Verdict verdict, Optional<V2Header> header, Optional<V2Fault> fault) {

  /** Whether a message is taken, by the second letter of MSA-1 (HL7 table 0008). */
  public enum Verdict {
    ACCEPTED("A"),
    /** The message is at fault: sent again as it is, it is refused again. */
    ERROR("E"),
    /** Nothing was looked at below the header, or the receiver cannot take it now. */
    REJECTED("R");

    private final String letter;

    Verdict(String letter) {
      this.letter = letter;
    }
  }

  private static final List<Integer> SENDER = List.of(3, 4);
  private static final List<Integer> RECEIVER = List.of(5, 6);

  /** Returns the answer to a message that is kept. */
  public static Acknowledgement accepted(V2Header header) {
    return new Acknowledgement(Verdict.ACCEPTED, Optional.of(header), Optional.empty());
  }

  /** Returns the answer to a message that is at fault. */
  public static Acknowledgement error(V2Header header, V2Fault fault) {
    return new Acknowledgement(Verdict.ERROR, Optional.of(header), Optional.of(fault));
  }

  /** Returns the answer to a message that cannot be taken here, or not now. */
  public static Acknowledgement rejected(Optional<V2Header> header, V2Fault fault) {
    return new Acknowledgement(Verdict.REJECTED, header, Optional.of(fault));
  }

  /**
   * Returns MSA-1: {@code AA}, {@code AE}, {@code AR}, or with {@code C} for {@code A} where the
   * sender asks for an accept acknowledgement.
   */
  public String code() {
    return (header.filter(V2Header::asksForAcceptance).isPresent() ? "C" : "A") + verdict.letter;
  }

  /** Returns the message, each segment with its end. */
  public String text(OffsetDateTime now) {
    SegmentDraft answer =
        new SegmentDraft("MSA").put(1, code()).put(2, header.map(this::controlId).orElse(""));
    String body =
        answer.text() + '\r' + fault.map(Acknowledgement::error).map(e -> e + '\r').orElse("");
    return head(now, body).text() + '\r' + body;
  }

  private String controlId(V2Header of) {
    return SegmentText.escaped(of.controlId());
  }

  /** Who sent the message receives the answer. */
  private SegmentDraft head(OffsetDateTime now, String body) {
    SegmentDraft head = new SegmentDraft("MSH").put(1, SegmentText.MARKS);
    header.ifPresent(
        of -> {
          for (int i = 0; i < SENDER.size(); i++) {
            head.put(SENDER.get(i) - 1, party(of, RECEIVER.get(i)));
            head.put(RECEIVER.get(i) - 1, party(of, SENDER.get(i)));
          }
        });
    return head.put(6, SegmentText.time(now))
        .put(8, "ACK^R01^ACK")
        .put(9, ControlId.of(now + body))
        .put(10, "P")
        .put(11, "2.5.1")
        .put(17, "UNICODE UTF-8");
  }

  /** An application or a facility: its name, and its address with the kind of that. */
  private static String party(V2Header header, int field) {
    return IntStream.rangeClosed(1, 3)
        .mapToObj(component -> SegmentText.escaped(header.component(field, component)))
        .collect(Collectors.joining("^"))
        .replaceAll("\\^+$", "");
  }

  private static String error(V2Fault fault) {
    V2Fault.Code code = fault.code();
    return new SegmentDraft("ERR")
        .put(2, fault.field() == 0 ? "" : "MSH^1^" + fault.field())
        .put(3, code.number() + "^" + code.words() + "^HL70357")
        .put(4, "E")
        .put(8, SegmentText.escaped(fault.text()))
        .text();
  }
}
