package org.isopter.task.input;

import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** How the bytes of an input are written down; the ending of a file name tells it. */
public enum InputForm {
  YAML("yaml", "yml"),
  JSON("json"),
  XML("xml"),
  /** One JSON document on each line. */
  NDJSON("ndjson"),
  /** A message of HL7 version 2. */
  MESSAGE("hl7"),
  /** What goes along with records, in a file beside them. */
  CARRIED("carried");

  /** The forms of a record. */
  public static final Set<InputForm> OF_RECORDS =
      Collections.unmodifiableSet(EnumSet.of(YAML, JSON, NDJSON));

  /** The forms of a FHIR resource. */
  public static final Set<InputForm> OF_FHIR =
      Collections.unmodifiableSet(EnumSet.of(JSON, XML, NDJSON));

  /** The forms of what may be either. */
  public static final Set<InputForm> OF_EITHER =
      Collections.unmodifiableSet(EnumSet.of(YAML, JSON, XML, NDJSON));

  private static final String COMPRESSED = ".gz";

  private final List<String> endings;

  InputForm(String... endings) {
    this.endings = List.of(endings);
  }

  /** Says whether a file name tells that the file is compressed. */
  static boolean isCompressed(String name) {
    return name.toLowerCase(Locale.ROOT).endsWith(COMPRESSED);
  }

  /** Returns a file name without what tells that the file is compressed. */
  public static String plain(String name) {
    return isCompressed(name) ? name.substring(0, name.length() - COMPRESSED.length()) : name;
  }

  /** Returns the form that a file name tells, compressed or not. */
  public static Optional<InputForm> ofFileName(String name) {
    String plain = plain(name);
    String ending = plain.substring(plain.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    for (InputForm form : values()) {
      if (form.endings.contains(ending)) {
        return Optional.of(form);
      }
    }
    return Optional.empty();
  }

  /** Returns the file names of the forms, for a message. */
  static String patterns(Collection<InputForm> forms) {
    return forms.stream()
        .filter(form -> form != CARRIED)
        .flatMap(form -> form.endings.stream())
        .map(ending -> "*." + ending)
        .collect(Collectors.joining(", "));
  }

  /** Returns the usual ending of a file name, without the dot. */
  public String ending() {
    return endings.get(0);
  }

  /** Returns the word that an option takes. */
  @Override
  public String toString() {
    return ending();
  }
}
