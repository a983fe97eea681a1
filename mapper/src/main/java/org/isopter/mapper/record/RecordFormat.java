package org.isopter.mapper.record;

import java.util.Locale;
import java.util.Optional;

/** A way to write a record down; both hold the same tree of keys and values. */
public enum RecordFormat {
  /** JSON (RFC 8259). */
  JSON,
  /** YAML 1.2. */
  YAML;

  /** Returns the format of a name: {@code json}, {@code yaml} or {@code yml}, in any case. */
  public static Optional<RecordFormat> of(String name) {
    return switch (name.toLowerCase(Locale.ROOT)) {
      case "json" -> Optional.of(JSON);
      case "yaml", "yml" -> Optional.of(YAML);
      default -> Optional.empty();
    };
  }

  /** Returns the format that the ending of a file name tells. */
  public static Optional<RecordFormat> ofFileName(String fileName) {
    int dot = fileName.lastIndexOf('.');
    return dot < 0 ? Optional.empty() : of(fileName.substring(dot + 1));
  }
}
