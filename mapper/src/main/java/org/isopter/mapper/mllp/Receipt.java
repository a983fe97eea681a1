package org.isopter.mapper.mllp;

import java.io.IOException;
import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.message.Acknowledgement;
import org.isopter.mapper.v2.V2Fault;
import org.isopter.mapper.v2.V2Header;
import org.isopter.mapper.v2.V2Reader;
import org.isopter.model.value.Result;

/**
 * What is answered to a message, and what became of it.
 *
 * @param answer the answer
 * @param kept where it is; empty where it is not kept
 */
record Receipt(Acknowledgement answer, Optional<KeptMessage> kept) {

  /** Keeps a message that can be read, and returns what is answered to it. */
  static Receipt of(byte[] message, Inbox inbox) {
    Optional<V2Header> header = V2Header.of(message);
    if (header.isEmpty()) {
      return rejected(header, V2Fault.Code.SEQUENCE, "a message of HL7 version 2");
    }
    Optional<V2Fault> fault = header.flatMap(V2Header::fault);
    if (fault.isPresent()) {
      return new Receipt(Acknowledgement.rejected(header, fault.get()), Optional.empty());
    }
    return of(header.get(), message, inbox);
  }

  private static Receipt of(V2Header header, byte[] message, Inbox inbox) {
    if (header.controlId().isEmpty()) {
      return error(header, V2Fault.Code.MISSING, 10, "a control id");
    }
    Result<Raw> read = V2Reader.read(message);
    if (!(read instanceof Result.Ok<Raw>)) {
      return error(header, V2Fault.Code.SEQUENCE, 0, read.faults().get(0).wanted());
    }
    try {
      return kept(header, inbox.keep(header, message));
    } catch (IOException failed) {
      return rejected(
          Optional.of(header), V2Fault.Code.INTERNAL, "a disk that takes it; send it again later");
    }
  }

  private static Receipt kept(V2Header header, KeptMessage kept) {
    return kept.state() == KeptMessage.State.OTHER
        ? error(header, V2Fault.Code.DUPLICATE, 10, "a control id that no other message has")
        : new Receipt(Acknowledgement.accepted(header), Optional.of(kept));
  }

  private static Receipt error(V2Header header, V2Fault.Code code, int field, String wanted) {
    return new Receipt(
        Acknowledgement.error(header, new V2Fault(code, field, "", wanted)), Optional.empty());
  }

  /** Returns what is answered where the message is not looked at. */
  static Receipt rejected(Optional<V2Header> header, V2Fault.Code code, String wanted) {
    return new Receipt(
        Acknowledgement.rejected(header, new V2Fault(code, 0, "", wanted)), Optional.empty());
  }
}
