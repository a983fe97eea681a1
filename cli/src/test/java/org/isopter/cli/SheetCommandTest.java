package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SheetCommandTest {

  private static final Pattern INSIDE =
      Pattern.compile("<(script|style)>(.*?)</\\1>", Pattern.DOTALL);

  private static final Pattern PACKED =
      Pattern.compile("<script type=\"text/plain\" id=\"model\">([^<]*)</script>");

  @TempDir private Path folder;

  private String page() throws IOException {
    Path file = folder.resolve("sheet.html");
    Run.of("sheet", "--output", file.toString()).ok();
    return Files.readString(file, UTF_8);
  }

  private static String allowed(String text) throws Exception {
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(UTF_8));
    return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
  }

  /** Returns the script of the model as the page unpacks it. */
  private static String model(String page) throws IOException {
    Matcher packed = PACKED.matcher(page);
    assertTrue(packed.find());
    byte[] bytes = Base64.getDecoder().decode(packed.group(1));
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
      return new String(in.readAllBytes(), UTF_8);
    }
  }

  @Test
  void allowsTheScriptsThatAreInThePageAndNoOther() throws Exception {
    String page = page();
    List<String> wanted = new ArrayList<>();
    Matcher inside = INSIDE.matcher(page);
    while (inside.find()) {
      wanted.add(allowed(inside.group(2)));
    }
    assertEquals(2, wanted.size());
    assertTrue(
        page.contains(
            "default-src 'none'; script-src %s %s; style-src %s; base-uri 'none'"
                .formatted(allowed(model(page)), wanted.get(1), wanted.get(0))));
  }

  @Test
  void loadsNothing() throws IOException {
    String shown = page().replaceAll("(?s)<script.*?</script>", "");

    for (String outside : List.of("http:", "https:", "src=", "@import", "url(", "<link", "{{")) {
      assertFalse(shown.contains(outside), outside);
    }
  }

  @Test
  void staysWithinOneAndAHalfMegabytes() throws IOException {
    int size = page().length();

    assertTrue(size > 400_000 && size < 1_500_000, "a page of " + size + " characters");
  }
}
