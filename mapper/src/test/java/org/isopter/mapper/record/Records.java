package org.isopter.mapper.record;

/** Records for tests. */
final class Records {

  static final String HEAD =
      """
      isopter: 1
      record: { id: ward-7-0412 }
      subject: { id: p-17 }
      performed: 2026-03-02T09:30:00+01:00
      status: final
      """;

  private Records() {}

  /** Returns a YAML record with these findings, which are indented already. */
  static String with(String findings) {
    return HEAD + "findings:\n" + findings;
  }
}
