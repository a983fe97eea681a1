package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.document.FullUrl;
import org.isopter.mapper.io.Sha256;
import org.isopter.mapper.json.Raw;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Canonical;

/**
 * What is read together, and so has one meaning for an address such as {@code Patient/1}. Where
 * nothing else is known of a person, tables would take those of two neighbourhoods for one.
 */
final class Neighbourhood {

  private static final String REFERENCE = Canonical.identifier("reference");

  private static final int DIGITS = 16;

  private final Supplier<Optional<String>> root;
  private final Supplier<String> mark;

  private Neighbourhood(Supplier<Optional<String>> root, Supplier<String> mark) {
    this.root = root;
    this.mark = mark;
  }

  /** Returns that of a document by itself: the same bytes are the same, wherever they lie. */
  static Neighbourhood of(PoolDocument document) {
    return new Neighbourhood(
        Optional::empty, () -> Sha256.hex(stripped(document.bytes())).substring(0, DIGITS));
  }

  /** Returns that of a bundle: the server of all its full URLs, else the document. */
  static Neighbourhood of(PoolDocument document, Raw bundle) {
    return new Neighbourhood(
        () -> root(bundle), () -> Sha256.hex(stripped(document.bytes())).substring(0, DIGITS));
  }

  /** Returns that of bare resources: the lines of a file, or the files of a folder. */
  static Neighbourhood of(String group) {
    return new Neighbourhood(Optional::empty, () -> Sha256.hex(group).substring(0, DIGITS));
  }

  /** Returns an examination under names that no other neighbourhood has. */
  Exam apart(Exam exam) {
    Header header = exam.header();
    return header
        .subject()
        .identifier()
        .filter(Neighbourhood::isRelative)
        .map(address -> new Exam(named(header, inFull(address)), exam.facts()))
        .orElse(exam);
  }

  private Identifier inFull(Identifier address) {
    String relative = address.value();
    return Identifier.of(
        REFERENCE,
        relative.startsWith("#")
            ? relative + " in " + mark.get()
            : root.get()
                .map(server -> server + "/" + relative)
                .orElseGet(() -> relative + " in " + mark.get()));
  }

  private static Header named(Header header, Identifier person) {
    // The key of the examination was made from the address, and holds no more than that did.
    String key = header.id().value() + "|" + person.value();
    return new Header(
        new Identifier(
            header.id().system(), UUID.nameUUIDFromBytes(key.getBytes(UTF_8)).toString()),
        new Party(Optional.of(person), header.subject().name()),
        header.demographics(),
        header.performer(),
        header.performed(),
        header.status(),
        header.setting(),
        header.amends(),
        header.remark());
  }

  private static boolean isRelative(Identifier identifier) {
    return identifier.system().equals(Optional.of(REFERENCE))
        && !identifier.value().contains("://");
  }

  private static Optional<String> root(Raw bundle) {
    Set<String> roots =
        bundle.objects("entry").stream()
            .flatMap(entry -> entry.string("fullUrl").flatMap(FullUrl::server).stream())
            .collect(Collectors.toSet());
    return roots.size() == 1 ? roots.stream().findFirst() : Optional.empty();
  }

  /** A line may end in a carriage return, or not: it is the same document. */
  private static byte[] stripped(byte[] bytes) {
    int end = bytes.length;
    while (end > 0 && bytes[end - 1] <= ' ' && bytes[end - 1] >= 0) {
      end--;
    }
    return end == bytes.length ? bytes : Arrays.copyOf(bytes, end);
  }
}
