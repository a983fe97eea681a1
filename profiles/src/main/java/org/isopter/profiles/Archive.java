package org.isopter.profiles;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.Date;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;

/** Puts files into a gzipped tar archive that depends on nothing but them. */
final class Archive {

  private static final Date TIME = Date.from(Instant.parse("2026-01-01T00:00:00Z"));

  private Archive() {}

  static byte[] of(Map<String, byte[]> files) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (TarArchiveOutputStream tar = new TarArchiveOutputStream(new GZIPOutputStream(out))) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        TarArchiveEntry entry = new TarArchiveEntry(file.getKey());
        entry.setSize(file.getValue().length);
        entry.setModTime(TIME);
        tar.putArchiveEntry(entry);
        tar.write(file.getValue());
        tar.closeArchiveEntry();
      }
    }
    return out.toByteArray();
  }
}
