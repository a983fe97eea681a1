package org.isopter.profiles.compiled;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/** The types of R4 as far as they are written here, from the table {@code r4.txt}. */
final class Standard {

  private static final String TABLE = "r4.txt";
  private static final Pattern SPACE = Pattern.compile(" ");

  private final Map<String, TypeTable> types = new HashMap<>();

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
    String name = choice ? cells[3] + "[x]" : key;
    TypeTable holder = type(cells[0].substring(0, point));
    holder.add(
        new Member(
            key,
            Name.of(name),
            Name.of(choice ? cells[3] : key),
            type(cells[1]),
            holder.bit(name),
            cells[2].equals("!") || cells[2].equals("+"),
            cells[2].equals("*") || cells[2].equals("+")));
  }

  private TypeTable type(String name) {
    return types.computeIfAbsent(name, TypeTable::new);
  }

  /** Returns the table of a type of resource; empty where there is none. */
  Optional<TypeTable> resource(String name) {
    return Optional.ofNullable(types.get(name))
        .filter(table -> table.isComplex() && name.indexOf('.') < 0);
  }
}
