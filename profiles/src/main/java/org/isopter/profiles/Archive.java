package org.isopter.profiles;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.Date;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;

/** Writes files into a gzipped tar archive that depends on nothing but them. */
final class Archive {

  private static final Date TIME = Date.from(Instant.parse("2026-01-01T00:00:00Z"));

  private Archive() {}

  static void write(Path tgz, Map<String, byte[]> files) throws IOException {
    Path folder = tgz.toAbsolutePath().getParent();
    Path whole = Files.createTempFile(folder, "package", ".tmp");
    try {
      try (OutputStream out = Files.newOutputStream(whole)) {
        write(out, files);
      }
      Files.move(whole, tgz, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(whole);
    }
  }

  private static void write(OutputStream out, Map<String, byte[]> files) throws IOException {
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
  }
}
