package org.isopter.task.page;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Objects;
import java.util.zip.GZIPOutputStream;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.Sha256;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.io.Utf8;

/**
 * Puts the examination sheet together: one page with its scripts and its style inside, which its
 * own policy keeps from loading or sending anything.
 */
public final class SheetPage {

  private static final String FOLDER = "/org/isopter/sheet/";

  private SheetPage() {}

  /**
   * Writes the page into a file.
   *
   * @throws UnwritableException when it cannot be written
   */
  public static void write(Path target) {
    try (AtomicFile file = AtomicFile.at(target)) {
      Utf8.write(file, target.toString(), html());
      file.commit();
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }

  /** Returns the page. */
  public static String html() {
    String model = text("model.js");
    String script = inside(text("sheet.js"));
    String style = text("sheet.css");
    return text("sheet.html")
        .replace("{{script-hashes}}", hash(model) + " " + hash(script))
        .replace("{{style-hash}}", hash(style))
        .replace("{{style}}", style)
        .replace("{{rows}}", inside(SheetRows.json()))
        .replace("{{script}}", script)
        .replace("{{model}}", packed(model));
  }

  /** Returns a script that nothing within it can end before its end. */
  private static String inside(String script) {
    return script.replace("</script", "<\\/script").replace("<!--", "<\\!--").replace("\r", "");
  }

  /** Returns a text compressed by gzip and in letters; it is a third as long so. */
  private static String packed(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream packing = new GZIPOutputStream(bytes)) {
      packing.write(text.getBytes(UTF_8));
    } catch (IOException memoryNeverFails) {
      throw new UncheckedIOException(memoryNeverFails);
    }
    return Base64.getEncoder().encodeToString(bytes.toByteArray());
  }

  private static String hash(String text) {
    byte[] digest = Sha256.of(text.getBytes(UTF_8));
    return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
  }

  private static String text(String name) {
    try (InputStream in =
        Objects.requireNonNull(SheetPage.class.getResourceAsStream(FOLDER + name), name)) {
      return new String(in.readAllBytes(), UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
