package org.isopter.mapper.store;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.PriorityQueue;
import org.isopter.mapper.table.SparseRow;

/**
 * Rows that wait on disk, in any number, until they are wanted in their order: sorted by parts that
 * fit into memory, which are then merged.
 */
final class WaitingRows implements AutoCloseable {

  /** Bytes that are sorted in memory, unless another number is given. */
  private static final int PART = 8 << 20;

  /** Bytes of a part that are read at a time. */
  private static final int BUFFER = 32 << 10;

  private static final Comparator<PackedRows> KEYS =
      (one, other) -> Arrays.compareUnsigned(one.key(), other.key());

  private final RowOrder order;
  private final FileChannel file;
  private final int part;

  /** Where each sorted part of the file ends. */
  private final List<Long> ends = new ArrayList<>();

  private final List<PackedRows> here = new ArrayList<>();
  private long bytes;

  WaitingRows(RowOrder order, Path file) throws IOException {
    this(order, file, PART);
  }

  /**
   * Begins a file.
   *
   * @param part how many bytes are sorted in memory
   */
  WaitingRows(RowOrder order, Path file, int part) throws IOException {
    this.order = order;
    this.part = part;
    this.file =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.READ,
            StandardOpenOption.WRITE,
            StandardOpenOption.DELETE_ON_CLOSE);
  }

  void add(PackedRows rows) throws IOException {
    here.add(rows);
    bytes += rows.key().length + rows.bytes().length;
    if (bytes >= part) {
      putDown();
    }
  }

  private void putDown() throws IOException {
    here.sort(KEYS);
    // Closing the stream would close the file.
    DataOutputStream out =
        new DataOutputStream(new BufferedOutputStream(Channels.newOutputStream(file), BUFFER));
    for (PackedRows rows : here) {
      out.writeInt(rows.key().length);
      out.writeInt(rows.bytes().length);
      out.writeInt(rows.count());
      out.write(rows.key());
      out.write(rows.bytes());
    }
    out.flush();
    ends.add(file.position());
    here.clear();
    bytes = 0;
  }

  /** Returns all rows in their order, to be read before more are added. */
  Iterator<SparseRow> sorted() {
    here.sort(KEYS);
    PriorityQueue<Part> parts = new PriorityQueue<>(Comparator.comparing(Part::next, KEYS));
    List<Iterator<PackedRows>> all = new ArrayList<>();
    long start = 0;
    for (long end : ends) {
      all.add(
          new Stored(
              new DataInputStream(new BufferedInputStream(new Slice(file, start, end), BUFFER))));
      start = end;
    }
    all.add(here.iterator());
    all.stream().filter(Iterator::hasNext).forEach(part -> parts.add(new Part(part.next(), part)));
    return new Merged(order, parts);
  }

  @Override
  public void close() throws IOException {
    file.close();
  }

  /** A part by the first of its examinations that was not taken yet. */
  private record Part(PackedRows next, Iterator<PackedRows> rest) {}

  /** Merges parts row by row. */
  private static final class Merged implements Iterator<SparseRow> {

    private final RowOrder order;
    private final PriorityQueue<Part> parts;
    private Iterator<SparseRow> rows = Collections.emptyIterator();

    Merged(RowOrder order, PriorityQueue<Part> parts) {
      this.order = order;
      this.parts = parts;
    }

    @Override
    public boolean hasNext() {
      return rows.hasNext() || !parts.isEmpty();
    }

    @Override
    public SparseRow next() {
      if (!rows.hasNext()) {
        rows = examination();
      }
      return rows.next();
    }

    /** An examination that was read several times has its rows sorted together. */
    private Iterator<SparseRow> examination() {
      PackedRows first = take();
      List<SparseRow> all = first.rows();
      boolean several = false;
      while (!parts.isEmpty() && KEYS.compare(first, parts.element().next()) == 0) {
        all.addAll(take().rows());
        several = true;
      }
      return (several ? order.sorted(all) : all).iterator();
    }

    private PackedRows take() {
      Part part = parts.remove();
      if (part.rest().hasNext()) {
        parts.add(new Part(part.rest().next(), part.rest()));
      }
      return part.next();
    }
  }

  /** Reads a part of the file. */
  private record Stored(DataInputStream in) implements Iterator<PackedRows> {

    @Override
    public boolean hasNext() {
      try {
        in.mark(1);
        boolean more = in.read() >= 0;
        in.reset();
        return more;
      } catch (IOException unreadable) {
        throw new UncheckedIOException(unreadable);
      }
    }

    @Override
    public PackedRows next() {
      try {
        int key = in.readInt();
        int bytes = in.readInt();
        int count = in.readInt();
        return new PackedRows(in.readNBytes(key), in.readNBytes(bytes), count);
      } catch (IOException unreadable) {
        throw new UncheckedIOException(unreadable);
      }
    }
  }

  /** The bytes of a file between two places; several are read in turn. */
  private static final class Slice extends InputStream {

    private final FileChannel file;
    private final long end;
    private long at;

    Slice(FileChannel file, long start, long end) {
      this.file = file;
      this.at = start;
      this.end = end;
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int from, int most) throws IOException {
      int length = (int) Math.min(most, end - at);
      if (length <= 0) {
        return -1;
      }
      int read = file.read(ByteBuffer.wrap(into, from, length), at);
      at += Math.max(read, 0);
      return read;
    }
  }
}
