package org.isopter.mapper.mllp;

/**
 * What came over a connection.
 *
 * @param kind whether it is a message
 * @param bytes the message without the bytes around it; of one that is cut off, its beginning
 */
@SuppressWarnings("ArrayRecordComponent") // Handed on once, never compared.
record Frame(Kind kind, byte[] bytes) {

  enum Kind {
    MESSAGE,
    /** The next message begins, or something else than its end follows the end mark. */
    UNENDED,
    /** It ended, or fell silent for too long, in the middle of a message. */
    CUT,
    TOO_LONG,
    /** Something else than the start of a message. */
    NO_MESSAGE,
    /** It ended, or was silent for too long, between two messages. */
    END
  }

  static Frame of(Kind kind) {
    return new Frame(kind, new byte[0]);
  }
}
