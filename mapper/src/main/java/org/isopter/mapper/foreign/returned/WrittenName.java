package org.isopter.mapper.foreign.returned;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.json.Raw;

/**
 * The identifier under which a resource was written here: that of the record, and for a fact its
 * name within the record.
 *
 * @param system the system of the record's identifier
 * @param value the value of the record's identifier
 * @param key the name within the record; empty for the record itself
 */
public record WrittenName(String system, String value, String key) {

  private static final Set<String> WHOLES = Set.of("DiagnosticReport", "Composition");

  /** A record, a slash, and the name of a fact or of a derived statement. */
  private static final Pattern OF_FACT =
      Pattern.compile("(.+)/((?:derived/)?[a-z0-9.-]+\\.(?:right|left|both)(?:[. ].*)?)");

  /** Returns the name of a resource that claims one of our profiles, or holds our report. */
  public static Optional<WrittenName> of(Raw.Obj resource) {
    if (ReturnedBundle.isPanel(resource) || WHOLES.contains(Neighbours.type(resource))) {
      return identifiers(resource).stream().findFirst().flatMap(WrittenName::whole);
    }
    if (!Neighbours.type(resource).equals("Observation")) {
      return Optional.empty();
    }
    return identifiers(resource).stream().flatMap(id -> fact(id).stream()).findFirst();
  }

  /** Returns the name of the record. */
  WrittenName record() {
    return new WrittenName(system, value, "");
  }

  /** Says whether a name within a record is that of a fact. */
  static boolean isFact(String key) {
    return !key.isEmpty() && !key.startsWith("derived/");
  }

  private static List<Raw.Obj> identifiers(Raw.Obj resource) {
    List<Raw.Obj> list = resource.objects("identifier");
    return list.isEmpty() ? resource.object("identifier").stream().toList() : list;
  }

  private static Optional<WrittenName> whole(Raw.Obj identifier) {
    return identifier
        .string("system")
        .flatMap(
            system -> identifier.string("value").map(value -> new WrittenName(system, value, "")));
  }

  private static Optional<WrittenName> fact(Raw.Obj identifier) {
    Matcher of = OF_FACT.matcher(identifier.string("value").orElse(""));
    return identifier
        .string("system")
        .filter(any -> of.matches())
        .map(system -> new WrittenName(system, of.group(1), of.group(2)));
  }
}
