package org.isopter.mapper.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The rows of one examination in one table, packed: each different value once, and each row by the
 * numbers of its values.
 *
 * @param key the bytes by which examinations are in their order
 * @param bytes the rows in their order
 * @param count how many rows they are
 */
public record PackedRows(byte[] key, byte[] bytes, int count) {

  private static final int TEXT = 0;
  private static final int NUMBER = 1;
  private static final int INTEGER = 2;
  private static final int TRUTH = 3;
  private static final int TIME = 4;

  /** Packs the rows of one examination, of which there is at least one. */
  static PackedRows of(RowOrder order, List<SparseRow> rows) {
    List<SparseRow> sorted = new ArrayList<>(rows);
    sorted.sort(order);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(4_096);
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      write(sorted, out);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return new PackedRows(order.key(sorted.get(0)), bytes.toByteArray(), rows.size());
  }

  private static void write(List<SparseRow> rows, DataOutputStream out) throws IOException {
    Map<Object, Integer> numbers = new LinkedHashMap<>();
    for (SparseRow row : rows) {
      for (Object value : row.values()) {
        numbers.putIfAbsent(value, numbers.size());
      }
    }
    number(numbers.size(), out);
    for (Object value : numbers.keySet()) {
      value(value, out);
    }
    for (SparseRow row : rows) {
      number(row.columns().length, out);
      for (int i = 0; i < row.columns().length; i++) {
        number(row.columns()[i], out);
        number(numbers.getOrDefault(row.values()[i], 0), out);
      }
    }
  }

  private static void value(Object value, DataOutputStream out) throws IOException {
    if (value instanceof String text) {
      byte[] bytes = text.getBytes(UTF_8);
      out.write(TEXT);
      number(bytes.length, out);
      out.write(bytes);
    } else if (value instanceof Double number) {
      out.write(NUMBER);
      out.writeDouble(number);
    } else if (value instanceof Long number) {
      out.write(INTEGER);
      out.writeLong(number);
    } else if (value instanceof Boolean truth) {
      out.write(TRUTH);
      out.writeBoolean(truth);
    } else if (value instanceof LocalDateTime time) {
      out.write(TIME);
      out.writeLong(time.toEpochSecond(ZoneOffset.UTC));
      out.writeInt(time.getNano());
    } else {
      throw new IllegalArgumentException("no column holds a " + value.getClass());
    }
  }

  /** Returns the rows. */
  List<SparseRow> rows() {
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      Object[] values = new Object[number(in)];
      for (int i = 0; i < values.length; i++) {
        values[i] = value(in);
      }
      List<SparseRow> rows = new ArrayList<>(count);
      for (int i = 0; i < count; i++) {
        rows.add(row(values, in));
      }
      return rows;
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private static SparseRow row(Object[] values, DataInputStream in) throws IOException {
    int[] columns = new int[number(in)];
    Object[] cells = new Object[columns.length];
    for (int i = 0; i < columns.length; i++) {
      columns[i] = number(in);
      cells[i] = values[number(in)];
    }
    return new SparseRow(columns, cells);
  }

  private static Object value(DataInputStream in) throws IOException {
    int kind = in.read();
    return switch (kind) {
      case TEXT -> new String(in.readNBytes(number(in)), UTF_8);
      case NUMBER -> in.readDouble();
      case INTEGER -> in.readLong();
      case TRUTH -> in.readBoolean();
      case TIME -> LocalDateTime.ofEpochSecond(in.readLong(), in.readInt(), ZoneOffset.UTC);
      default -> throw new IOException("no kind of value: " + kind);
    };
  }

  /** Writes a number of at least 0, seven bits in a byte, the lowest first. */
  private static void number(int number, DataOutputStream out) throws IOException {
    int rest = number;
    while (rest >= 0x80) {
      out.write(rest & 0x7f | 0x80);
      rest >>>= 7;
    }
    out.write(rest);
  }

  private static int number(DataInputStream in) throws IOException {
    int number = 0;
    int shift = 0;
    int next;
    do {
      next = in.read();
      number |= (next & 0x7f) << shift;
      shift += 7;
    } while (next >= 0x80);
    return number;
  }
}
