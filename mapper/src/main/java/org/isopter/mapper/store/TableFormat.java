package org.isopter.mapper.store;

import java.util.Locale;

/** The file formats of tables. */
public enum TableFormat {
  PARQUET(parquet(8192)),
  CSV("(FORMAT csv, HEADER true)"),
  NDJSON("(FORMAT json)");

  private final String options;

  TableFormat(String options) {
    this.options = options;
  }

  /** Returns the options of a file in Parquet with so many rows in a group. */
  static String parquet(int rows) {
    return "(FORMAT parquet, COMPRESSION zstd, ROW_GROUP_SIZE " + rows + ")";
  }

  /** Returns the ending of file names, without the dot. */
  public String ending() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Returns the options of SQL's {@code COPY}. */
  public String options() {
    return options;
  }

  /** Returns the word that an option takes. */
  @Override
  public String toString() {
    return ending();
  }
}
