package org.isopter.mapper.describe;

import java.util.List;
import org.isopter.model.text.TextColumns;

/** Writes a description for a terminal. */
public final class DescriptionText {

  private DescriptionText() {}

  /** Returns the tables of a description, one under the other. */
  public static String of(Description description) {
    StringBuilder text = new StringBuilder();
    for (Listing listing : description.listings()) {
      write(text, listing);
    }
    return text.toString();
  }

  private static void write(StringBuilder text, Listing listing) {
    text.append(text.isEmpty() ? "" : "\n").append(listing.title()).append('\n');
    if (!listing.remark().isEmpty()) {
      text.append("  ").append(listing.remark()).append('\n');
    }
    if (listing.rows().isEmpty()) {
      text.append("  none\n");
      return;
    }
    int[] widths = widths(listing);
    row(text, listing, widths, listing.columns());
    listing.rows().forEach(row -> row(text, listing, widths, row));
  }

  private static int[] widths(Listing listing) {
    int[] widths = new int[listing.columns().size()];
    for (int i = 0; i < widths.length; i++) {
      int at = i;
      int widest = listing.rows().stream().mapToInt(row -> row.get(at).length()).max().orElse(0);
      widths[i] = Math.max(listing.columns().get(i).length(), widest);
    }
    return widths;
  }

  private static void row(StringBuilder text, Listing listing, int[] widths, List<String> cells) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      String cell = cells.get(i);
      line.append("  ")
          .append(
              listing.isNumber(i)
                  ? TextColumns.right(cell, widths[i])
                  : TextColumns.left(cell, widths[i]));
    }
    text.append(line.toString().stripTrailing()).append('\n');
  }
}
