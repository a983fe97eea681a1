package org.isopter.mapper.v2;

/**
 * Why a message is not taken.
 *
 * @param code the kind (HL7 table 0357)
 * @param field where in the header, as {@code 9}; 0 where in none of its fields
 * @param seen what stands there, without what may name a person
 * @param wanted what would have been taken
 */
public record V2Fault(Code code, int field, String seen, String wanted) {

  /** Kinds of errors with the numbers and names of HL7 table 0357 (version 2.5.1). */
  public enum Code {
    SEQUENCE(100, "Segment sequence error"),
    MISSING(101, "Required field missing"),
    TABLE_VALUE(103, "Table value not found"),
    MESSAGE_TYPE(200, "Unsupported message type"),
    EVENT(201, "Unsupported event code"),
    PROCESSING(202, "Unsupported processing id"),
    VERSION(203, "Unsupported version id"),
    DUPLICATE(205, "Duplicate key identifier"),
    INTERNAL(207, "Application internal error");

    private final int number;
    private final String words;

    Code(int number, String words) {
      this.number = number;
      this.words = words;
    }

    /** Returns the number. */
    public int number() {
      return number;
    }

    /** Returns the name in the table. */
    public String words() {
      return words;
    }
  }

  /** Returns what would have been taken, and where. */
  public String text() {
    return (field == 0 ? "" : "MSH-" + field + ": ") + "wanted " + wanted;
  }
}
