package org.isopter.profiles.compiled;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/** The types of R4 as far as they are written here, from the table {@code r4.txt}. */
final class Standard {

  private static final String TABLE = "r4.txt";
  private static final Pattern SPACE = Pattern.compile(" ");

  private final Map<String, Map<String, Member>> members = new HashMap<>();

  private Standard() {}

  /** Reads the table. */
  static Standard read() {
    Standard standard = new Standard();
    try (InputStream table =
            Objects.requireNonNull(Standard.class.getResourceAsStream(TABLE), TABLE);
        BufferedReader lines = new BufferedReader(new InputStreamReader(table, UTF_8))) {
      lines.lines().filter(line -> !line.startsWith("#")).forEach(standard::add);
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
    return standard;
  }

  private void add(String line) {
    String[] cells = SPACE.split(line, -1);
    int point = cells[0].lastIndexOf('.');
    String key = cells[0].substring(point + 1);
    boolean choice = cells.length > 3;
    Member member =
        new Member(
            key,
            choice ? cells[3] + "[x]" : key,
            choice ? cells[3] : key,
            cells[1],
            cells[2].equals("!") || cells[2].equals("+"),
            cells[2].equals("*") || cells[2].equals("+"));
    members
        .computeIfAbsent(cells[0].substring(0, point), type -> new LinkedHashMap<>())
        .put(key, member);
  }

  /** Says whether a type has members; the others are primitive, or not known here. */
  boolean isComplex(String type) {
    return members.containsKey(type);
  }

  /** Returns the member of a type under a name of JSON. */
  Optional<Member> member(String type, String key) {
    return Optional.ofNullable(members.getOrDefault(type, Map.of()).get(key));
  }

  /** Returns the name of a required member that an item lacks. */
  Optional<String> lacking(Item item) {
    for (Member member : members.getOrDefault(item.type(), Map.of()).values()) {
      if (member.required() && !item.has(member.name())) {
        return Optional.of(member.key());
      }
    }
    return Optional.empty();
  }
}
