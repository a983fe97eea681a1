package org.isopter.mapper.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoField;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.table.SparseRow;

/**
 * The rows of one examination in one table, packed: each different value once, and each row by the
 * numbers of its values.
 */
public final class PackedRows {

  private static final int TEXT = 0;
  private static final int NUMBER = 1;
  private static final int INTEGER = 2;
  private static final int TRUTH = 3;
  private static final int TIME = 4;

  private final byte[] key;
  private final byte[] bytes;
  private final int count;

  /**
   * Holds rows that are packed.
   *
   * @param key the bytes by which examinations are in their order
   * @param bytes the rows in their order
   * @param count how many rows they are
   */
  PackedRows(byte[] key, byte[] bytes, int count) {
    this.key = key;
    this.bytes = bytes;
    this.count = count;
  }

  byte[] key() {
    return key;
  }

  byte[] bytes() {
    return bytes;
  }

  int count() {
    return count;
  }

  /** Packs the rows of one examination, of which there is at least one. */
  static PackedRows of(RowOrder order, List<SparseRow> rows) {
    List<SparseRow> sorted = order.sorted(rows);
    PackedBytes bytes = new PackedBytes();
    write(sorted, bytes);
    return new PackedRows(order.key(sorted.get(0)), bytes.all(), rows.size());
  }

  private static void write(List<SparseRow> rows, PackedBytes out) {
    Numbering numbering = new Numbering(rows);
    PackedBytes cells = new PackedBytes();
    for (SparseRow row : rows) {
      int[] numbers = numbering.of(row);
      cells.number(numbers.length);
      for (int i = 0; i < numbers.length; i++) {
        cells.number(row.columns()[i]);
        cells.number(numbers[i]);
      }
    }
    out.number(numbering.known.size());
    out.put(numbering.values);
    out.put(cells);
  }

  /** Numbers the values of rows, each different value once. */
  private static final class Numbering {

    private final Map<Object, Integer> known;
    private final PackedBytes values = new PackedBytes();
    private SparseRow before = new SparseRow(new int[0], new Object[0]);
    private int[] ofBefore = new int[0];

    Numbering(List<SparseRow> rows) {
      this.known = new HashMap<>(8 * rows.size());
    }

    int[] of(SparseRow row) {
      int[] numbers = new int[row.columns().length];
      int at = 0;
      for (int i = 0; i < numbers.length; i++) {
        int column = row.columns()[i];
        while (at < ofBefore.length && before.columns()[at] < column) {
          at++;
        }
        // Neighbours mostly share the very object, which needs no look-up.
        boolean same =
            at < ofBefore.length
                && before.columns()[at] == column
                && before.values()[at] == row.values()[i];
        numbers[i] = same ? ofBefore[at] : number(row.values()[i]);
      }
      before = row;
      ofBefore = numbers;
      return numbers;
    }

    private int number(Object value) {
      Integer next = known.size();
      Integer number = known.putIfAbsent(value, next);
      if (number == null) {
        value(value, values);
        return next;
      }
      return number;
    }
  }

  private static void value(Object value, PackedBytes out) {
    if (value instanceof String text) {
      byte[] bytes = text.getBytes(UTF_8);
      out.number(TEXT);
      out.number(bytes.length);
      out.put(bytes);
    } else if (value instanceof Double number) {
      out.number(NUMBER);
      out.put(Double.doubleToRawLongBits(number));
    } else if (value instanceof Long number) {
      out.number(INTEGER);
      out.put(number);
    } else if (value instanceof Boolean truth) {
      out.number(TRUTH);
      out.number(truth ? 1 : 0);
    } else if (value instanceof LocalDateTime time) {
      out.number(TIME);
      out.put(time.toEpochSecond(ZoneOffset.UTC));
      out.number(time.get(ChronoField.NANO_OF_SECOND));
    } else {
      throw new IllegalArgumentException("no column holds a " + value.getClass());
    }
  }

  /** Returns the rows; their texts are {@link PackedText}. */
  List<SparseRow> rows() {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    Object[] values = new Object[number(in)];
    for (int i = 0; i < values.length; i++) {
      values[i] = value(in);
    }
    List<SparseRow> rows = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      rows.add(row(values, in));
    }
    return rows;
  }

  private static SparseRow row(Object[] values, ByteBuffer in) {
    int[] columns = new int[number(in)];
    Object[] cells = new Object[columns.length];
    for (int i = 0; i < columns.length; i++) {
      columns[i] = number(in);
      cells[i] = values[number(in)];
    }
    return new SparseRow(columns, cells);
  }

  private static Object value(ByteBuffer in) {
    int kind = number(in);
    return switch (kind) {
      case TEXT -> text(in);
      case NUMBER -> Double.longBitsToDouble(in.getLong());
      case INTEGER -> in.getLong();
      case TRUTH -> number(in) == 1;
      case TIME -> LocalDateTime.ofEpochSecond(in.getLong(), number(in), ZoneOffset.UTC);
      default -> throw new IllegalStateException("no kind of value: " + kind);
    };
  }

  private static PackedText text(ByteBuffer in) {
    byte[] text = new byte[number(in)];
    in.get(text);
    return new PackedText(text);
  }

  private static int number(ByteBuffer in) {
    int number = 0;
    int shift = 0;
    int next;
    do {
      next = in.get() & 0xff;
      number |= (next & 0x7f) << shift;
      shift += 7;
    } while (next >= 0x80);
    return number;
  }
}
