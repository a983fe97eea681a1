package org.isopter.mapper.io;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.GZIPInputStream;

/**
 * The bytes of a gzip file. A few kilobytes of gzip can hold gigabytes of blank lines, which no
 * limit on the size of a document ever meets, so that reading stops where too much of it is blank.
 */
public final class Inflated extends FilterInputStream {

  /**
   * The most blank bytes that may follow each other: 1 MB, a million lines, which is read at once.
   */
  public static final long MOST_BLANK = 1L << 20;

  private static final int GZIP_FIRST = 0x1f;
  private static final int GZIP_SECOND = 0x8b;

  private long blank;

  private Inflated(InputStream in) {
    super(in);
  }

  /**
   * Opens a gzip stream.
   *
   * @throws IOException when it is none; reading throws one where more than {@link #MOST_BLANK}
   *     bytes in a row are blank
   */
  public static InputStream of(InputStream compressed) throws IOException {
    return new Inflated(new GZIPInputStream(compressed, 1 << 16));
  }

  /**
   * Opens a stream that may be compressed; one that does not begin as gzip does is handed on.
   *
   * @throws IOException when it cannot be read
   */
  public static InputStream whereCompressed(InputStream raw) throws IOException {
    BufferedInputStream buffered = new BufferedInputStream(raw, 1 << 16);
    buffered.mark(2);
    boolean gzip = buffered.read() == GZIP_FIRST && buffered.read() == GZIP_SECOND;
    buffered.reset();
    return gzip ? of(buffered) : buffered;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] into, int from, int length) throws IOException {
    int read = super.read(into, from, length);
    blank = read > 0 && Lines.isBlank(into, from, read) ? blank + read : 0;
    if (blank > MOST_BLANK) {
      throw new IOException("more than " + (MOST_BLANK >> 20) + " MB of blank lines in a row");
    }
    return read;
  }
}
